import type { Clearing } from '../../record/condition.ts'
import type { Hold, Stage } from '../../record/entities/work.ts'
import type { PartyId } from '../../record/ids.ts'
import type { ProjectRecord } from '../../record/project-record.ts'
import type { Instant } from '../../record/scalars.ts'
import { must } from '../../record/table.ts'
import { holdsOf, linksTo } from '../indexes.ts'
import { noticeOver } from '../notice-over.ts'
import { type GateRule, met, unmet } from '../rule.ts'

/**
 * Gate rule 7: hold points on the stages before it are released by the party named, which is never conceded; witnesses
 * were invited in time. A witness who was invited and stayed silent past the notice and the visit doesn't stop the work.
 */
export const hold: GateRule = (record, stage, at) =>
  linksTo(record.links, stage.id).flatMap((link) => {
    const before = must(record.stages, link.from)
    if (before.removedAt !== null) return []
    return holdsOf(record.holds, before.id).map((point) => {
      if (isPassed(record, point, at)) return met('hold', point.id)
      return unmet({
        rule: 'hold',
        entity: point.id,
        root: point.id,
        since: point.invitedAt ?? point.setAt,
        concedable: point.point === 'witness' && !stage.safety && !before.safety,
        ...cleared(point, before),
        stage: before.id,
        point: point.point,
        is: point.state,
      })
    })
  })

/** Whether a hold or witness point lets what follows go on at that time: cleared, or a witness was silent past the notice and the visit. */
export function isPassed(record: ProjectRecord, point: Hold, at: Instant): boolean {
  if (point.state === 'released' || point.state === 'waived') return true
  if (point.point === 'hold' || point.state !== 'invited') return false
  const over = noticeOver(point, record.projects.rows.get(record.id)?.timeZone ?? 'UTC')
  return over !== null && over <= at
}

function cleared(point: Hold, stage: Stage): { clearedBy: PartyId[]; clearedWith: Clearing } {
  const input = { hold: point.id }
  if (point.point === 'witness' && point.state === 'set')
    return { clearedBy: [stage.party], clearedWith: { command: 'hold.invite', input } }
  return { clearedBy: [point.party], clearedWith: { command: 'hold.release', input } }
}
