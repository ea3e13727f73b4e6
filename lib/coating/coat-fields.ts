import * as z from 'zod/mini'
import { AirReadingId, ColourId } from '../record/ids.ts'
import { Instant, Line, OptionalText } from '../record/scalars.ts'

/** What may be said of a coat besides what it is and where it lies. What is left out is not recorded. */
export const coatFields = {
  name: z.optional(z.nullable(Line)),
  batch: z.optional(z.nullable(Line)),
  ratio: z.optional(z.nullable(Line)),
  thinner: z.optional(z.nullable(Line)),
  coats: z.optional(z.int().check(z.minimum(1), z.maximum(50))),
  endedAt: z.optional(Instant),
  keyedWith: z.optional(z.nullable(Line)),
  keyedAt: z.optional(z.nullable(Instant)),
  colour: z.optional(z.nullable(ColourId)),
  air: z.optional(z.nullable(AirReadingId)),
  remark: z.optional(OptionalText),
}
