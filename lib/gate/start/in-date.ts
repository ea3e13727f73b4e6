import type { InDate } from '../../record/entities/standing.ts'
import type { Stage } from '../../record/entities/work.ts'
import type { ProjectRecord } from '../../record/project-record.ts'
import type { Instant } from '../../record/scalars.ts'
import { indexBy } from '../../record/table.ts'
import { civilDateIn } from '../../record/zoned-time.ts'
import { type GateRule, met, unmet } from '../rule.ts'

const byParty = indexBy<InDate>((one) => (one.withdrawnAt === null ? [one.party] : []))

/** The last day through which a thing of that party is in date; null where nothing was ever said of it. */
export const inDateUntil = (record: ProjectRecord, stage: Stage, thing: InDate['thing']) =>
  byParty(record.inDates, stage.party)
    .filter((one) => one.thing === thing)
    .map(({ until }) => until)
    .toSorted()
    .at(-1) ?? null

/**
 * Gate rule 10: what the work asks for is in date, through that day where the project is: the booth's measured clearance, lifting tackle,
 * a sprayer's fit-for-work tick, a torque wrench. The record says in date or not, never why.
 */
export const inDate: GateRule = (record, stage, at) => {
  if (stage.inDate.length === 0) return []
  const today = todayOf(record, at)
  const out = stage.inDate.filter((thing) => (inDateUntil(record, stage, thing) ?? '') < today)
  const [first] = out
  if (first === undefined) return [met('in-date', stage.id)]
  return [
    unmet({
      rule: 'in-date',
      entity: stage.id,
      root: stage.id,
      since: null,
      concedable: false,
      clearedBy: [stage.party],
      clearedWith: { command: 'inDate.record', input: { party: stage.party, thing: first } },
      things: out.map((thing) => ({ thing, until: inDateUntil(record, stage, thing) })),
    }),
  ]
}

const todayOf = (record: ProjectRecord, at: Instant) =>
  civilDateIn(at, record.projects.rows.get(record.id)?.timeZone ?? 'UTC')
