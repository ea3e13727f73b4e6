import * as z from 'zod/mini'
import {
  AirReadingId,
  AssemblyId,
  CoatId,
  ColourId,
  FilmId,
  PartyId,
  PersonId,
  ProjectId,
  StageId,
  TinterId,
} from '../ids.ts'
import { Instant, Line, OptionalText } from '../scalars.ts'

/** What a coat is, from metal outwards. */
export const CoatKind = z.enum([
  'etch primer',
  'rust converter',
  'epoxy',
  'filler',
  'sprayed polyester',
  'high build',
  'isolator',
  'seam sealer',
  'colour',
  'lacquer',
  'chassis coat',
  'wax',
  'plating',
  'powder',
])
export type CoatKind = z.infer<typeof CoatKind>

/** What a coat lies on. */
export const Ground = z.enum(['bare metal', ...CoatKind.options])
export type Ground = z.infer<typeof Ground>

/**
 * One layer on an assembly. `endedAt` is the end of its last coat, from which windows count; `keyedWith` how the ground under it was keyed,
 * null where it went on within the window. `offAt`: taken off again.
 */
export const Coat = z.object({
  kind: z.literal('coat'),
  id: CoatId,
  project: ProjectId,
  assembly: AssemblyId,
  stage: z.nullable(StageId),
  party: PartyId,
  product: CoatKind,
  name: z.nullable(Line),
  batch: z.nullable(Line),
  ratio: z.nullable(Line),
  thinner: z.nullable(Line),
  coats: z.int().check(z.minimum(1)),
  endedAt: Instant,
  keyedWith: z.nullable(Line),
  keyedAt: z.nullable(Instant),
  colour: z.nullable(ColourId),
  air: z.nullable(AirReadingId),
  remark: OptionalText,
  by: z.nullable(PersonId),
  at: Instant,
  /** Sanded through at one place, down to what lies bare there: it goes back to its own primer first. */
  sandedAt: z.nullable(Instant),
  sandedTo: z.nullable(Ground),
  sandedPlace: z.nullable(Line),
  offAt: z.nullable(Instant),
})
export type Coat = Readonly<z.infer<typeof Coat>>

/** How a film gauge reads: one over steel, the other over aluminium; neither reads on the other's metal (ISO 2808 names the methods). */
export const GaugeMethod = z.enum(['magnetic', 'eddy current'])
export type GaugeMethod = z.infer<typeof GaugeMethod>

/** The whole film at one point of a panel, in µm. `zeroed`: the gauge was set to nought that day on the same metal; else it proves nothing. */
export const Film = z.object({
  kind: z.literal('film'),
  id: FilmId,
  project: ProjectId,
  assembly: AssemblyId,
  stage: z.nullable(StageId),
  panel: Line,
  point: Line,
  microns: z.number().check(z.minimum(0)),
  metal: z.enum(['steel', 'aluminium']),
  method: GaugeMethod,
  zeroed: z.boolean(),
  gauge: z.nullable(Line),
  at: Instant,
  by: z.nullable(PersonId),
})
export type Film = Readonly<z.infer<typeof Film>>

/** The colour of the car as it was mixed. */
export const Colour = z.object({
  kind: z.literal('colour'),
  id: ColourId,
  project: ProjectId,
  party: PartyId,
  name: Line,
  code: z.nullable(Line),
  variant: z.nullable(Line),
  batch: z.nullable(Line),
  /** When the sprayed-out card was agreed, and by whom. */
  cardAt: z.nullable(Instant),
  cardBy: z.nullable(PersonId),
  gun: z.nullable(Line),
  keepsake: z.nullable(Line),
  at: Instant,
  by: z.nullable(PersonId),
  removedAt: z.nullable(Instant),
})
export type Colour = Readonly<z.infer<typeof Colour>>

/** One tinter of a colour's formula, in grams for `of` grams of the whole. */
export const Tinter = z.object({
  kind: z.literal('tinter'),
  id: TinterId,
  project: ProjectId,
  colour: ColourId,
  position: z.int(),
  name: Line,
  grams: z.number().check(z.positive()),
  batch: z.nullable(Line),
  removedAt: z.nullable(Instant),
})
export type Tinter = Readonly<z.infer<typeof Tinter>>
