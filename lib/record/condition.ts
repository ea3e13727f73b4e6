import type { CommandName } from './command-names.ts'
import type { CoatKind, Ground } from './entities/coating.ts'
import type { DatedThing } from './entities/standing.ts'
import type { Hazard, StageState } from './entities/work.ts'
import type { AssemblyId, BayId, PartId, PartyId, PersonId, SlotId, StageId } from './ids.ts'
import type { CivilDate, Instant, Minor } from './scalars.ts'

/** Plain JSON, as it goes over the wire. */
export type Json =
  | string
  | number
  | boolean
  | null
  | readonly Json[]
  | { readonly [key: string]: Json }

/** The command that clears a condition, ready to press; what the person must still say is left out of `input`. */
export interface Clearing {
  readonly command: CommandName
  readonly input: { readonly [key: string]: Json }
}

interface Base<Rule extends string> {
  readonly rule: Rule
  /** What the condition is about. */
  readonly entity: string
  /** The first cause behind it; `entity` itself where there is none further up. */
  readonly root: string
  readonly since: Instant | null
  /** May be conceded by those entitled. Never where safety is at stake. */
  readonly concedable: boolean
  /** Parties who can clear it; none where only the clock can. */
  readonly clearedBy: readonly PartyId[]
  readonly clearedWith: Clearing | null
}

/** Why a stage may not start, by gate rule (DESIGN §4). */
export type StartCondition =
  | (Base<'predecessor'> & { readonly stage: StageId; readonly is: StageState })
  | (Base<'countersign'> & { readonly stage: StageId; readonly party: PartyId })
  | (Base<'least-lag'> & {
      readonly stage: StageId
      /** Null while the metal is too cold to cure at all. */
      readonly until: Instant | null
      /** The metal's temperature in °C by the last log, where one lengthens it. */
      readonly metal: number | null
    })
  | (Base<'greatest-lag'> & { readonly stage: StageId; readonly ranOutAt: Instant })
  | (Base<'custody'> & { readonly custodian: PartyId; readonly handover: string | null })
  | (Base<'exclusive-use'> & { readonly stage: StageId })
  | (Base<'must-be-fitted'> & { readonly assembly: AssemblyId })
  | (Base<'must-be-off'> & { readonly assembly: AssemblyId })
  | (Base<'part'> & {
      readonly part: PartId
      readonly is: string
      readonly promised: CivilDate | null
      readonly promises: number
    })
  | (Base<'change-order'> & { readonly is: string; readonly number: number })
  | (Base<'decision'> & { readonly is: string })
  | (Base<'hold'> & {
      readonly stage: StageId
      readonly point: 'hold' | 'witness'
      readonly is: string
    })
  | (Base<'precautions'> & { readonly hazards: readonly Hazard[] })
  | (Base<'air'> & {
      readonly is: 'missing' | 'stale' | 'too damp' | 'too cold' | 'too warm' | 'near dew point'
      /** By how many °C the surface stands above the dew point; null where there is no reading. */
      readonly margin: number | null
    })
  | (Base<'in-date'> & {
      readonly things: readonly { readonly thing: DatedThing; readonly until: CivilDate | null }[]
    })
  | Base<'milestone'>
  | (Base<'coat-over'> & {
      readonly assembly: AssemblyId
      readonly over: Ground
      readonly lays: CoatKind
      /** The row of the trade's facts. */
      readonly fact: string
      readonly why:
        | 'not over it'
        | 'isolator first'
        | 'primer first'
        | 'window or keyed'
        | 'window or a fresh coat'
      /** When its window ran out, or until when it is too soon; null where neither is known. */
      readonly ranOutAt: Instant | null
      readonly opensAt: Instant | null
    })
  | (Base<'sanded-through'> & {
      readonly assembly: AssemblyId
      readonly to: Ground
      readonly place: string
    })
  | (Base<'bare-metal'> & { readonly assembly: AssemblyId; readonly ranOutAt: Instant })
  | (Base<'lacquer-cure'> & { readonly assembly: AssemblyId; readonly until: Instant })
  | (Base<'film-left'> & {
      readonly assembly: AssemblyId
      /** µm that are to come off, and µm of lacquer that would be left at the thinnest point; null where it wasn't read. */
      readonly flats: number
      readonly left: number | null
      readonly where: string | null
    })
  | (Base<'slot'> & {
      readonly slot: SlotId | null
      readonly is: 'none' | 'asked' | 'outside' | 'bay taken'
      readonly from: Instant | null
      readonly to: Instant | null
    })

/** Why a stage may not be signed off, countersigned, confirmed. */
export type SignOffCondition =
  | (Base<'check'> & { readonly is: 'missing' | 'out of limits' })
  | (Base<'no-end'> & { readonly is: StageState })
  | Base<'own-work'>

/** Every other expected no. */
export type OtherCondition =
  /** Something is in a state in which this can't be done; `needs` are those in which it can. */
  | (Base<'state'> & { readonly is: string; readonly needs: readonly string[] })
  | (Base<'circle'> & { readonly stages: readonly StageId[] })
  | (Base<'exists'> & { readonly field: string })
  /** An input that is well formed and still can't be so; `field` names it, `why` is a key of lib/words. */
  | (Base<'input'> & { readonly field: string; readonly why: string })
  | (Base<'time'> & {
      readonly field: string
      readonly why:
        | 'in the future'
        | 'before the start'
        | 'after the end'
        | 'span ends before it begins'
        | 'span is over'
      readonly limit: Instant | null
    })
  | (Base<'slot-taken'> & {
      readonly what: 'bay' | 'assembly'
      readonly bay: BayId | null
      readonly from: Instant
      readonly to: Instant
      readonly by: PartyId | null
    })
  | (Base<'not-alone'> & { readonly person: PersonId })
  | (Base<'proof'> & { readonly minutes: number })
  | (Base<'shown-changed'> & { readonly shown: string; readonly now: string })
  | (Base<'standing-consent'> & {
      readonly allowed: Minor
      readonly asked: Minor
      readonly what: 'each' | 'total'
    })
  | (Base<'stale'> & { readonly expected: number; readonly changedAt: number })
  | (Base<'file'> & { readonly sha256: string })
  /** The view may not see what this hangs on; the record knows. */
  | Base<'unknown'>

/** Why not: one thing that is not as it must be, with who can clear it. */
export type Condition = StartCondition | SignOffCondition | OtherCondition
/** Name of the rule that a condition comes from. */
export type Rule = Condition['rule']

/** The parts of a condition that most refusals outside the gate leave plain. */
export const plain = (entity: string) => ({
  entity,
  root: entity,
  since: null,
  concedable: false,
  clearedBy: [],
  clearedWith: null,
})

/** A refusal because something is in the wrong state. */
export const wrongState = (entity: string, is: string, ...needs: string[]): Condition => ({
  ...plain(entity),
  rule: 'state',
  is,
  needs,
})

/** A refusal because one field of a well-formed input can't be so; `why` is a key of lib/words. */
export const wrongInput = (entity: string, field: string, why: string): Condition => ({
  ...plain(entity),
  rule: 'input',
  field,
  why,
})
