import type { Context } from '../record/command.ts'
import type { SignOff, Stage } from '../record/entities/work.ts'
import type { PartyId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'

/** One signature on a stage, by the person who presses, for `party`. */
export const signature = (
  record: ProjectRecord,
  stage: Stage,
  type: SignOff['type'],
  party: PartyId,
  ctx: Context,
): SignOff => ({
  kind: 'signOff',
  id: ctx.newId('sgn'),
  project: record.id,
  stage: stage.id,
  party,
  type,
  person: ctx.actor.person,
  at: ctx.happenedAt,
  withdrawnAt: null,
  reason: null,
})
