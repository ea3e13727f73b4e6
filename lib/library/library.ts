import * as z from 'zod/mini'
import { Hours, Line, Text } from '../record/scalars.ts'
import stages from './stages.json' with { type: 'json' }

const Key = z.string().check(z.regex(/^[a-z]+\.[a-z]+$/, 'a key such as eng.ready'))
const keys = z.array(z.string())

/** A stage as a library has it: trades in place of parties, assemblies by key. Hours are three-point working hours, lags clock hours. */
const LibraryStage = z.object({
  key: Key,
  group: Line,
  name: Line,
  trade: Line,
  assemblies: keys,
  hours: z.object({ a: Hours, m: Hours, b: Hours }),
  people: z.int().check(z.minimum(1)),
  bay: Line,
  after: z.array(
    z.object({
      key: Key,
      least_lag_hours: Hours,
      greatest_lag_hours: z.optional(z.nullable(Hours)),
      why: Line,
    }),
  ),
  needs: z.object({ fitted: keys, off: keys }),
  fits: keys,
  removes: keys,
  parts_kinds: keys,
  checks: z.array(
    z.object({
      name: Line,
      kind: z.enum(['reading', 'photo', 'tick', 'document']),
      unit: z.optional(Line),
      low: z.optional(z.number()),
      high: z.optional(z.number()),
      limit: z.optional(z.enum(['enter', 'record'])),
      note: Text,
    }),
  ),
  point: z.nullable(z.object({ kind: z.enum(['hold', 'witness']), who: Line, what: Line })),
  caution: z.nullable(Text),
  hazard: z.nullable(Line),
  option: z.nullable(Line),
})
export type LibraryStage = Readonly<z.infer<typeof LibraryStage>>

const Library = z.object({
  about: z.string(),
  options: keys,
  trades: keys,
  stages: z.array(LibraryStage),
})
export type Library = Readonly<z.infer<typeof Library>>

/**
 * The stages of a full restoration: the writers' own judgement (common practice, from memory) unless a note says that it was read. Every
 * limit in it is typical and is replaced by the maker's sheet or the figures for the car in hand.
 */
export const fullRestoration: Library = Library.parse(stages)
