import { type Actor, managesFor, managesLead } from '../record/actor.ts'
import { type Condition, wrongState } from '../record/condition.ts'
import type { Party } from '../record/entities/people.ts'
import type { Stage } from '../record/entities/work.ts'
import type { PartyId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { must } from '../record/table.ts'

/** The lead's manager sets up every stage, a shop's manager those of its own party. */
export const maySetUp = (actor: Actor, record: ProjectRecord, party: PartyId): boolean =>
  managesLead(actor, record) || (actor.role === 'manager' && managesFor(actor, party))

/** Why a stage can't be set up any more; nothing while it is planned. What has begun relied on how it stood. */
export function notPlanned(stage: Stage): Condition[] {
  if (stage.removedAt !== null) return [wrongState(stage.id, 'removed', 'planned')]
  return stage.state === 'planned' ? [] : [wrongState(stage.id, stage.state, 'planned')]
}

const left = (party: Party): Condition[] =>
  party.leftAt === null ? [] : [wrongState(party.id, 'no longer taking part', 'taking part')]

/** Refuses parties that have left. @throws {NoSuchEntity} */
export const partiesLeft = (record: ProjectRecord, parties: readonly PartyId[]): Condition[] =>
  parties.flatMap((party) => left(must(record.parties, party)))
