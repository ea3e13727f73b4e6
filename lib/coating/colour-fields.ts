import * as z from 'zod/mini'
import type { Tinter } from '../record/entities/coating.ts'
import type { ColourId, NewId, ProjectId } from '../record/ids.ts'
import { Line } from '../record/scalars.ts'

/** One tinter as it is typed: grams in one mix of the formula. */
const TinterLine = z.strictObject({
  name: Line,
  grams: z.number().check(z.positive(), z.maximum(1_000_000)),
  batch: z.optional(z.nullable(Line)),
})

/** What may be said of a colour besides its name. */
export const colourFields = {
  code: z.optional(z.nullable(Line)),
  variant: z.optional(z.nullable(Line)),
  batch: z.optional(z.nullable(Line)),
  gun: z.optional(z.nullable(Line)),
  keepsake: z.optional(z.nullable(Line)),
  tinters: z.optional(z.array(TinterLine).check(z.maxLength(40))),
}

/** The tinters of a formula, in the order in which they are weighed. */
export const tintersOf = (
  newId: NewId,
  project: ProjectId,
  colour: ColourId,
  lines: readonly z.infer<typeof TinterLine>[],
): Tinter[] =>
  lines.map((line, i) => ({
    kind: 'tinter',
    id: newId('tnt'),
    project,
    colour,
    position: i + 1,
    name: line.name,
    grams: line.grams,
    batch: line.batch ?? null,
    removedAt: null,
  }))
