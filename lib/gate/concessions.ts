import type { Condition } from '../record/condition.ts'
import type { Concession, Stage } from '../record/entities/work.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { concessionsOf } from './indexes.ts'
import { whoConcedes } from './who-concedes.ts'

/** The concession on that condition of a stage, agreed to by everyone it needs or not yet; undefined where there is none. */
export const concessionOn = (
  record: ProjectRecord,
  stage: Stage,
  rule: string,
  entity: string,
): Concession | undefined =>
  concessionsOf(record.concessions, stage.id).find(
    (concession) => concession.rule === rule && concession.entity === entity,
  )

/** It counts once every party that it needs has agreed. */
const isComplete = (concession: Concession): boolean =>
  concession.needs.every((party) => concession.parties.includes(party))

/**
 * The concession by which a condition is accepted, with a reason, by all who had to; null where there is none.
 * What can't be conceded never is, not even by a concession from before the stage was marked as safety work.
 */
export function concededBy(
  record: ProjectRecord,
  stage: Stage,
  condition: Condition,
): Concession | null {
  if (!condition.concedable) return null
  const concession = concessionOn(record, stage, condition.rule, condition.entity)
  return concession !== undefined && isComplete(concession) ? concession : null
}

/** Whether a condition is accepted with a reason by all who had to. */
export const isConceded = (record: ProjectRecord, stage: Stage, condition: Condition): boolean =>
  concededBy(record, stage, condition) !== null

/** The concessions of a stage as they stand once another party has it: that party has to accept them too. */
export const concessionsOfNewParty = (record: ProjectRecord, given: Stage): Concession[] =>
  concessionsOf(record.concessions, given.id).map((concession) => ({
    ...concession,
    needs: whoConcedes(record, given, concession),
  }))
