import * as z from 'zod/mini'
import { InDateId, MilestoneId, PartyId, PersonId, ProjectId, StageId } from '../ids.ts'
import { CivilDate, Instant, Line, Minor, OptionalText } from '../scalars.ts'

/** What the work of some stages asks to be in date. */
export const DatedThing = z.enum([
  'booth clearance',
  'lifting examination',
  'fit for spraying',
  'torque wrench',
])
export type DatedThing = z.infer<typeof DatedThing>

/**
 * A party says that a thing or a person of its own is in date, through the day `until`. `person` for what is a person's own, of which the record
 * says in date or not and nothing else. `minutes`: the measured clearance time of a booth.
 */
export const InDate = z.object({
  kind: z.literal('inDate'),
  id: InDateId,
  project: ProjectId,
  party: PartyId,
  thing: DatedThing,
  name: Line,
  person: z.nullable(PersonId),
  minutes: z.nullable(z.number().check(z.minimum(0))),
  doneOn: CivilDate,
  until: CivilDate,
  by: PersonId,
  at: Instant,
  withdrawnAt: z.nullable(Instant),
})
export type InDate = Readonly<z.infer<typeof InDate>>

/** A payment that is agreed to be made before `stage` starts: from `payer` to `party`. */
export const Milestone = z.object({
  kind: z.literal('milestone'),
  id: MilestoneId,
  project: ProjectId,
  stage: StageId,
  party: PartyId,
  payer: PartyId,
  name: Line,
  net: z.nullable(Minor),
  agreedAt: Instant,
  agreedBy: PersonId,
  metAt: z.nullable(Instant),
  metBy: z.nullable(PersonId),
  remark: OptionalText,
  removedAt: z.nullable(Instant),
})
export type Milestone = Readonly<z.infer<typeof Milestone>>
