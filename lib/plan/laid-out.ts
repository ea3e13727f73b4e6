import type { StageId } from '../record/ids.ts'
import type { Instant } from '../record/scalars.ts'

/** What a stage waits for last before it can begin: nothing but now, another stage (and its lag), a part's promise, a slot. */
export type WaitsFor =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'stage'; readonly stage: StageId }
  | { readonly kind: 'part'; readonly part: string }
  | { readonly kind: 'slot'; readonly slot: string }

/** A stage laid along the days. */
export interface LaidStage {
  readonly stage: StageId
  readonly from: Instant
  readonly to: Instant
  /** Over, as recorded · begun, its end reckoned · to come, all reckoned. */
  readonly tense: 'over' | 'begun' | 'to come'
  /** Nobody has given its hours: one working day is drawn. */
  readonly hoursUnknown: boolean
  /** It waits for something that has no day: a part nobody has promised, a yes, a decision. Drawn as if it came now. */
  readonly undated: boolean
  /** Working days by which it may slip while the last day stays; null where it is over. */
  readonly floatDays: number | null
  readonly onRun: boolean
  readonly waitsFor: WaitsFor
}

/**
 * The build order along the days. Today it comes from `lay-out.ts`, a sketch by the links alone; the plan will give the same
 * shape, with its odds beside it.
 */
export interface LaidOut {
  readonly stages: ReadonlyMap<string, LaidStage>
  /** The critical run: each waits for the one before it, the last ends last. */
  readonly run: readonly StageId[]
  /** When the last of it ends; null where nothing is left to do. */
  readonly end: Instant | null
}
