import type { Stage } from '../record/entities/work.ts'
import type { PartyId, ProjectId, StageId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import type { Instant } from '../record/scalars.ts'
import { all } from '../record/table.ts'
import { type Coming, comingTo } from './coming.ts'
import { gateOf } from './gate.ts'
import { stagesOfParty } from './indexes.ts'
import { type OnUs, onUs } from './on-us.ts'
import { rootChain } from './root-chain.ts'
import type { GateCondition } from './rule.ts'
import { type StageStatus, stageGate } from './status.ts'

/** A project as this shop's view has it, and the party that the shop is in it. */
export interface SheetProject {
  readonly record: ProjectRecord
  readonly party: PartyId
}

/** A stage of this shop. */
export interface SheetStage {
  readonly project: ProjectId
  readonly stage: StageId
  readonly status: StageStatus
}

/** A stage of this shop that can't start yet: on whom it waits in the end, or until when on the clock. */
export interface SheetWaiting extends SheetStage {
  /** Who can clear the first cause; nobody where only the clock can. */
  readonly on: readonly PartyId[]
  readonly until: Instant | null
  readonly root: string
  /** The condition at the root: what those parties have to do. */
  readonly cause: GateCondition
  readonly conditions: readonly GateCondition[]
}

/** What the lead entered for this shop by telephone, to be confirmed. */
export interface SheetTold {
  readonly project: ProjectId
  readonly told: string
  readonly entity: string
  readonly command: string
  readonly at: Instant
}

/** A shop's day over all its projects. */
export interface DaySheet {
  readonly start: readonly SheetStage[]
  readonly inWork: readonly SheetStage[]
  readonly waits: readonly SheetWaiting[]
  readonly onUs: readonly OnUs[]
  readonly coming: readonly Coming[]
  readonly told: readonly SheetTold[]
}

/**
 * What a shop can start, has in work, waits for and on whom; who waits on it; what is coming to it; what it has to confirm.
 * Each project as the shop's own view has it, so nothing hidden is told.
 */
export function daySheet(projects: readonly SheetProject[], at: Instant): DaySheet {
  const sheets = projects.map(({ record, party }) => ofProject(record, party, at))
  return {
    start: sheets.flatMap((sheet) => sheet.start),
    inWork: sheets.flatMap((sheet) => sheet.inWork),
    waits: sheets.flatMap((sheet) => sheet.waits),
    onUs: bySince(sheets.flatMap((sheet) => sheet.onUs)),
    coming: sheets.flatMap((sheet) => sheet.coming),
    told: sheets.flatMap((sheet) => sheet.told),
  }
}

function ofProject(record: ProjectRecord, party: PartyId, at: Instant): DaySheet {
  const stages = [...stagesOfParty(record.stages, party)].sort((a, b) => a.number - b.number)
  const line = (stage: Stage, status: StageStatus): SheetStage => ({
    project: record.id,
    stage: stage.id,
    status,
  })
  const start: SheetStage[] = []
  const inWork: SheetStage[] = []
  const waits: SheetWaiting[] = []
  for (const stage of stages) {
    const { status, conditions } = stageGate(record, stage, at)
    if (stage.state === 'in work' || stage.state === 'paused' || stage.state === 'ended')
      inWork.push(line(stage, status))
    else if (stage.state === 'planned' || stage.state === 'reopened') {
      if (conditions.length === 0) start.push(line(stage, status))
      else waits.push(...waiting(record, stage, line(stage, status), at))
    }
  }
  return {
    start,
    inWork,
    waits,
    onUs: onUs(record, party, at),
    coming: comingTo(record, party),
    told: all(record.told)
      .filter((told) => told.party === party && told.confirmedAt === null)
      .map((told) => ({
        project: record.id,
        told: told.id,
        entity: told.entity,
        command: told.command,
        at: told.at,
      })),
  }
}

function waiting(
  record: ProjectRecord,
  stage: Stage,
  line: SheetStage,
  at: Instant,
): SheetWaiting[] {
  const conditions = gateOf(record, at).conditions(stage)
  const claim = claimNow(stage, conditions)
  if (claim !== undefined) {
    const { root, clearedBy: on } = claim
    return [{ ...line, on, until: null, root, cause: claim, conditions }]
  }
  const [first] = rootChain(record, stage, at)
  const last = first?.chain.at(-1)
  if (first === undefined || last === undefined) return []
  const { condition } = last
  const lags = conditions.flatMap((unmet) => (unmet.rule === 'least-lag' ? [unmet.until] : []))
  const clockOnly = lags.length === conditions.length
  return [
    {
      ...line,
      on: condition.clearedBy,
      until: clockOnly ? (lags.sort().at(-1) ?? null) : null,
      root: first.root,
      cause: condition,
      conditions,
    },
  ]
}

/** Once all before a stage is done, the slot that its own shop has yet to claim comes before what others owe it. */
const claimNow = (stage: Stage, conditions: readonly GateCondition[]): GateCondition | undefined =>
  conditions.some(({ rule }) => rule === 'predecessor' || rule === 'countersign')
    ? undefined
    : conditions.find(({ rule, clearedBy }) => rule === 'slot' && clearedBy.includes(stage.party))

/** What has waited longest first. */
const bySince = (lines: readonly OnUs[]): OnUs[] =>
  [...lines].sort((a, b) => ((a.since ?? '') < (b.since ?? '') ? -1 : 1))
