import type { Stage } from '../record/entities/work.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import type { Instant } from '../record/scalars.ts'
import { linksTo } from './indexes.ts'
import { type Judged, requirementsOf } from './requirements.ts'
import { behind } from './root.ts'
import type { GateCondition } from './rule.ts'

/** One step from a condition towards its root: this stage isn't done because of that condition of it. */
export interface ChainStep {
  readonly stage: Stage['id']
  readonly condition: GateCondition
}

/** The gate of one record at one time. Every stage is judged once, however many ask. */
export interface Gate {
  /** Everything asked of a stage before it starts, with the root of each unmet condition. */
  readonly requirements: (stage: Stage) => readonly Judged[]
  /** Unmet and not conceded. */
  readonly conditions: (stage: Stage) => readonly GateCondition[]
  /** The steps from a condition of a stage up to its root, the condition itself first. */
  readonly chain: (stage: Stage, condition: GateCondition) => readonly ChainStep[]
}

/** The first cause behind a stage that isn't done, and the condition of it through which it is reached. */
interface Cause {
  readonly root: string
  readonly through: GateCondition | null
}

const last = new WeakMap<ProjectRecord, { readonly at: Instant; readonly gate: Gate }>()

/** The gate of that record at that time; asking again for the same answers from what was judged. */
export function gateOf(record: ProjectRecord, at: Instant): Gate {
  const known = last.get(record)
  if (known !== undefined && known.at === at) return known.gate
  const gate = makeGate(record, at)
  last.set(record, { at, gate })
  return gate
}

function makeGate(record: ProjectRecord, at: Instant): Gate {
  const judged = new Map<Stage, readonly Judged[]>()
  const rooted = new Map<Stage, readonly Judged[]>()
  const causes = new Map<string, Cause>()

  function bare(stage: Stage): readonly Judged[] {
    const known = judged.get(stage)
    if (known !== undefined) return known
    const found = requirementsOf(record, stage, at)
    judged.set(stage, found)
    return found
  }

  /** The stages behind a stage's own causes, as far as they aren't known yet. */
  function unknownBehind(stage: Stage): Stage[] {
    if (stage.state === 'in doubt') return doubtedBefore(record, stage)
    if (!isToStart(stage)) return []
    return unmetOf(bare(stage)).flatMap((condition) => {
      const next = behind(record, stage, condition)
      return 'stage' in next ? (record.stages.rows.get(next.stage) ?? []) : []
    })
  }

  /** Follows the causes of a stage with a list of its own, so that a chain of thousands doesn't overflow. */
  function causeOf(first: Stage): Cause {
    const known = causes.get(first.id)
    if (known !== undefined) return known
    const path = [first]
    const entered = new Set<string>()
    for (let stage = path.at(-1); stage !== undefined; stage = path.at(-1)) {
      const before = entered.has(stage.id)
        ? []
        : unknownBehind(stage).filter((next) => !causes.has(next.id) && !entered.has(next.id))
      entered.add(stage.id)
      if (before.length > 0) {
        path.push(...before)
        continue
      }
      if (!causes.has(stage.id)) causes.set(stage.id, decideCause(stage))
      path.pop()
    }
    return causes.get(first.id) ?? { root: first.id, through: null }
  }

  /** The cause of a stage whose upstream causes are known; one that isn't closes a circle and is named itself. */
  function decideCause(stage: Stage): Cause {
    if (stage.state === 'in doubt') {
      const before = doubtedBefore(record, stage)[0]
      const root = before === undefined ? stage.id : (causes.get(before.id)?.root ?? before.id)
      return { root, through: null }
    }
    if (!isToStart(stage)) return { root: stage.id, through: null }
    const found = unmetOf(bare(stage))
      .filter((condition) => condition.rule !== 'unknown')
      .map((condition) => ({ root: rootOf(stage, condition), through: condition }))
    return mostOften(found) ?? { root: stage.id, through: null }
  }

  function rootOf(stage: Stage, condition: GateCondition): string {
    const next = behind(record, stage, condition)
    return 'stage' in next ? (causes.get(next.stage)?.root ?? next.stage) : next.entity
  }

  function requirements(stage: Stage): readonly Judged[] {
    const known = rooted.get(stage)
    if (known !== undefined) return known
    const found = bare(stage).map((requirement) => {
      const { unmet } = requirement
      if (unmet === null) return requirement
      const next = behind(record, stage, unmet)
      if ('stage' in next) {
        const before = record.stages.rows.get(next.stage)
        if (before !== undefined) causeOf(before)
      }
      return { ...requirement, unmet: { ...unmet, root: rootOf(stage, unmet) } }
    })
    rooted.set(stage, found)
    return found
  }

  function chain(stage: Stage, condition: GateCondition): readonly ChainStep[] {
    const steps: ChainStep[] = []
    const seen = new Set<string>()
    let step: ChainStep | null = { stage: stage.id, condition }
    while (step !== null && !seen.has(step.stage)) {
      seen.add(step.stage)
      steps.push(step)
      step = above(step)
    }
    return steps
  }

  function above(step: ChainStep): ChainStep | null {
    const at = record.stages.rows.get(step.stage)
    const next = at === undefined ? null : behind(record, at, step.condition)
    if (next === null || !('stage' in next)) return null
    const before = record.stages.rows.get(next.stage)
    const through = before === undefined ? null : causeOf(before).through
    return before === undefined || through === null
      ? null
      : { stage: before.id, condition: through }
  }

  return { requirements, conditions: (stage) => unmetOf(requirements(stage)), chain }
}

/** Work on it can only begin through the gate. */
const isToStart = (stage: Stage): boolean => stage.state === 'planned' || stage.state === 'reopened'

const unmetOf = (requirements: readonly Judged[]): GateCondition[] =>
  requirements.flatMap(({ unmet, concession }) =>
    unmet === null || concession !== null ? [] : [unmet],
  )

/** The stages before one in doubt that are themselves reopened or in doubt. */
const doubtedBefore = (record: ProjectRecord, stage: Stage): Stage[] =>
  linksTo(record.links, stage.id).flatMap((link) => {
    const before = record.stages.rows.get(link.from)
    const doubted = before?.state === 'reopened' || before?.state === 'in doubt'
    return before !== undefined && doubted ? [before] : []
  })

/** The cause that holds most; where several do, the first, and the clock only where there is nothing else. */
function mostOften(found: readonly (Cause & { readonly through: GateCondition })[]) {
  const byPeople = found.filter(({ through }) => through.rule !== 'least-lag')
  const candidates = byPeople.length > 0 ? byPeople : found
  const count = (root: string) => candidates.filter((other) => other.root === root).length
  return candidates.reduce<(typeof found)[number] | undefined>(
    (best, next) => (best === undefined || count(next.root) > count(best.root) ? next : best),
    undefined,
  )
}
