import type { Stage } from '../record/entities/work.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import type { Instant } from '../record/scalars.ts'
import { type ChainStep, gateOf } from './gate.ts'
import type { GateCondition } from './rule.ts'

/** One first cause, and what it holds: "one thing holds three of the four". */
export interface RootCause {
  /** The stage, change order, part, handover… to be dealt with first. */
  readonly root: string
  /** The unmet conditions of the stage that would fall with it. */
  readonly holds: readonly GateCondition[]
  /** The longest way from one of them to the root, a step a stage, the refused stage first. */
  readonly chain: readonly ChainStep[]
}

/** The first causes behind everything that keeps a stage from starting, those that hold most first. */
export function rootChain(record: ProjectRecord, stage: Stage, at: Instant): RootCause[] {
  const gate = gateOf(record, at)
  const byRoot = new Map<string, GateCondition[]>()
  for (const condition of gate.conditions(stage)) {
    const known = byRoot.get(condition.root)
    if (known === undefined) byRoot.set(condition.root, [condition])
    else known.push(condition)
  }
  return [...byRoot]
    .map(([root, holds]) => ({
      root,
      holds,
      chain: holds
        .map((condition) => gate.chain(stage, condition))
        .reduce((longest, chain) => (chain.length > longest.length ? chain : longest)),
    }))
    .sort((a, b) => b.holds.length - a.holds.length)
}
