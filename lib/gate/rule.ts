import type { Condition, Rule, StartCondition } from '../record/condition.ts'
import type { Stage } from '../record/entities/work.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import type { Instant } from '../record/scalars.ts'
import { isEverConceded } from './who-concedes.ts'

/** What keeps a stage from starting; *unknown* where the view may not see what it hangs on. */
export type GateCondition = StartCondition | Extract<Condition, { rule: 'unknown' }>

/** One thing that the gate asks of a stage: met where `unmet` is null. */
export interface Requirement {
  readonly rule: Rule
  /** What it is about: a stage, link, assembly, part, change order, decision, hold point, slot. */
  readonly entity: string
  readonly unmet: GateCondition | null
}

/**
 * A rule of the gate: everything it asks of that stage at that time, met or not, so that a card can say "5 of 9 met" and
 * the two can't disagree. @throws {Hidden} where the view may not see what it hangs on.
 */
export type GateRule = (record: ProjectRecord, stage: Stage, at: Instant) => readonly Requirement[]

/** A requirement that is met. */
export const met = (rule: Rule, entity: string): Requirement => ({ rule, entity, unmet: null })

/** A requirement that isn't met. */
export const unmet = (condition: GateCondition): Requirement => ({
  rule: condition.rule,
  entity: condition.entity,
  // Who may concede is said in one table.
  unmet: { ...condition, concedable: condition.concedable && isEverConceded(condition.rule) },
})
