import { type Actor, actsFor } from '../record/actor.ts'
import type { Context } from '../record/command.ts'
import type { Condition } from '../record/condition.ts'
import type { Hold } from '../record/entities/work.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { must } from '../record/table.ts'
import { notOpen } from './hold-state.ts'
import { ownWorkConditions, standsIn } from './own-work.ts'
import { notIn } from './stage-state.ts'

/** Whether that person acts for the party of a point, and is the one named where a person is. */
export const isNamed = (actor: Actor, hold: Hold): boolean =>
  (hold.person === null || hold.person === actor.person) && actsFor(actor, hold.party)

/** Whether that person may release or waive a point: they are named, or stand in for a one-hand shop. */
export const mayClear = (actor: Actor, record: ProjectRecord, hold: Hold): boolean =>
  isNamed(actor, hold) || standsIn(actor, record, must(record.stages, hold.stage), hold.party)

/** Why a point can't be released or waived now: it is cleared already, its work hasn't begun, or it is that person's own work. */
export function clearConditions(
  record: ProjectRecord,
  hold: Hold,
  command: 'hold.release' | 'hold.waive',
  ctx: Context,
): Condition[] {
  const over = notOpen(hold)
  if (over !== null) return [over]
  const stage = must(record.stages, hold.stage)
  const notBegun = notIn(stage, 'in work', 'paused', 'ended', 'signed off', 'in doubt')
  if (notBegun !== null) return [notBegun]
  const press = { command, input: { hold: hold.id } }
  return ownWorkConditions(record, stage, hold.party, press, ctx)
}

/** A point that was released or waived. */
export const cleared = (
  hold: Hold,
  state: 'released' | 'waived',
  remark: string | undefined,
  ctx: Context,
): Hold => ({
  ...hold,
  state,
  clearedAt: ctx.happenedAt,
  clearedBy: ctx.actor.person,
  remark: remark ?? null,
})
