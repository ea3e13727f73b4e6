import * as z from 'zod/mini'
import {
  AirReadingId,
  BayId,
  CheckId,
  MetalReadingId,
  PartyId,
  PersonId,
  ProjectId,
  ReadingId,
  StageId,
  StepId,
} from '../ids.ts'
import { CivilDate, Instant, Line, OptionalText, Text } from '../scalars.ts'

const Finite = z.number()

/**
 * One taking of a check's figure, at one or several points. `values` are in the check's own unit at full precision, `entered` as they were
 * typed, in `enteredUnit`. `least` and `greatest` are the limits in force when it was taken. A repeated or corrected reading names its
 * follower in `replacedBy` and stays.
 */
export const Reading = z.object({
  kind: z.literal('reading'),
  id: ReadingId,
  project: ProjectId,
  stage: StageId,
  check: CheckId,
  values: z.array(Finite),
  entered: z.array(Finite),
  enteredUnit: z.nullable(Line),
  least: z.nullable(Finite),
  greatest: z.nullable(Finite),
  verdict: z.enum(['passed', 'out of limits', 'kept']),
  instrument: z.nullable(Line),
  calibratedOn: z.nullable(CivilDate),
  /** Recorded where the work stood, or typed in later. */
  place: z.enum(['at the work', 'typed in later']),
  takenAt: Instant,
  at: Instant,
  by: z.nullable(PersonId),
  remark: OptionalText,
  replacedBy: z.nullable(ReadingId),
  /** Why it was replaced by a correction; null where it was merely repeated. */
  reason: z.nullable(Text),
})
export type Reading = Readonly<z.infer<typeof Reading>>

/** Air and surface temperature in °C and relative humidity in % at the work of a stage, before it is sprayed. */
export const AirReading = z.object({
  kind: z.literal('airReading'),
  id: AirReadingId,
  project: ProjectId,
  stage: StageId,
  party: PartyId,
  bay: z.nullable(BayId),
  air: Finite,
  surface: Finite,
  humidity: Finite,
  takenAt: Instant,
  at: Instant,
  by: z.nullable(PersonId),
})
export type AirReading = Readonly<z.infer<typeof AirReading>>

/** The metal's temperature in °C while what `stage` laid on it cures; it holds until the next such reading. */
export const MetalReading = z.object({
  kind: z.literal('metalReading'),
  id: MetalReadingId,
  project: ProjectId,
  stage: StageId,
  celsius: Finite,
  takenAt: Instant,
  at: Instant,
  by: z.nullable(PersonId),
})
export type MetalReading = Readonly<z.infer<typeof MetalReading>>

/** One step of a stage's procedure. */
export const Step = z.object({
  kind: z.literal('step'),
  id: StepId,
  project: ProjectId,
  stage: StageId,
  position: z.int(),
  text: Text,
  tools: z.array(Line),
  caution: z.nullable(Text),
  tickedAt: z.nullable(Instant),
  tickedBy: z.nullable(PersonId),
  removedAt: z.nullable(Instant),
})
export type Step = Readonly<z.infer<typeof Step>>
