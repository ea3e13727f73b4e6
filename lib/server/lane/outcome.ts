import type { Actor } from '../../record/actor.ts'
import type { Condition } from '../../record/condition.ts'
import type { DeviceNeeds } from '../../record/device-needs.ts'
import type { InputIssue } from '../../record/input-issue.ts'
import type { ProjectRecord, ShopRecord } from '../../record/project-record.ts'
import { type AnyRecord, isProject } from '../load.ts'
import type { Move } from '../views/changed-for.ts'

/** A move of either kind of record. */
export type AnyMove =
  | { readonly of: 'project'; readonly move: Move<ProjectRecord> }
  | { readonly of: 'shop'; readonly move: Move<ShopRecord> }

/** A move of whichever kind its record is. */
export const anyMove = (record: AnyRecord, rest: Omit<Move<ProjectRecord>, 'record'>): AnyMove =>
  isProject(record)
    ? { of: 'project', move: { record, ...rest } }
    : { of: 'shop', move: { record, ...rest } }

/** What came of a command. */
export type Outcome =
  /** Carried out; `again`: it had been before, and nothing was changed now. `actor` says in which view to answer. */
  | {
      readonly is: 'done'
      readonly actor: Actor
      readonly moves: readonly AnyMove[]
      readonly again: boolean
    }
  | {
      readonly is: 'refused'
      readonly actor: Actor
      readonly record: AnyRecord
      readonly conditions: readonly Condition[]
    }
  | { readonly is: 'invalid'; readonly issues: readonly InputIssue[] }
  | { readonly is: 'forbidden' }
  /** A shop's phone must ask something first; nothing was decided. */
  | { readonly is: 'needs'; readonly needs: DeviceNeeds }
  /** Something named isn't there, or not for this person. */
  | { readonly is: 'missing'; readonly entity: string }
  /** The key belongs to another command. */
  | { readonly is: 'key reused' }
  /** The database can't be reached; nothing is known to have changed. */
  | { readonly is: 'unavailable' }

/** An input with one thing wrong. */
export const invalid = (field: string, message: string): Outcome => ({
  is: 'invalid',
  issues: [{ field, message }],
})
