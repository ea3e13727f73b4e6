import type pg from 'pg'
import { type Condition, plain, wrongState } from '../../record/condition.ts'
import type { Entity } from '../../record/entity.ts'
import { SQLSTATE } from '../database/commit-function.ts'
import type { Taken } from './draft.ts'
import { invalid, type Outcome } from './outcome.ts'

/** Unique indexes, by the field that a person would have to change. */
const UNIQUE_FIELD: { readonly [constraint: string]: string } = {
  Party_lead: 'lead',
  Party_owner: 'role',
  Party_shop: 'shop',
  Participant_person: 'person',
  Membership_person: 'person',
  Stage_number: 'number',
  ChangeOrder_number: 'number',
  Link_from_to: 'to',
}

/**
 * What to answer where the database refused one command: it knows of other projects' slots and of what another node wrote a
 * moment ago. Undefined where the refusal is no expected one.
 */
export function refusedByDatabase(error: pg.DatabaseError, taken: Taken): Outcome | undefined {
  const { code = '', constraint = '' } = error
  const entities = taken.moves.flatMap(({ move }) => move.entities)
  const refused = (...conditions: Condition[]): Outcome | undefined => {
    const record = taken.moves[0]?.move.record
    return record && { is: 'refused', actor: taken.actor, record, conditions }
  }
  if (code === '23P01') return refused(...slotTaken(constraint, entities))
  if (code === '23505') {
    if (constraint.endsWith('_pkey') || constraint.endsWith('_key_key')) return { is: 'key reused' }
    const field = UNIQUE_FIELD[constraint]
    const entity = entities[0]?.id ?? taken.entries[0]?.record ?? ''
    return field === undefined ? undefined : refused({ ...plain(entity), rule: 'exists', field })
  }
  if (code === '23503') {
    return {
      is: 'missing',
      entity: /\(([a-z]{3}_\w+)\) is not/.exec(error.detail ?? '')?.[1] ?? '',
    }
  }
  if (code === SQLSTATE.approvedChange) {
    const order = entities.find(({ kind }) => kind === 'changeOrder' || kind === 'changeLine')
    return order && refused(wrongState(order.id, 'approved', 'draft', 'sent'))
  }
  if (/^22/.test(code) || code === '23514') {
    return invalid('input', 'A number or a date in it is beyond what can be kept.')
  }
  return undefined
}

/** Somebody else's slot, of which no more is known here than that it is there. */
function slotTaken(constraint: string, entities: readonly Entity[]): Condition[] {
  const what = constraint === 'Slot_bay_once' ? 'bay' : 'assembly'
  return entities.flatMap((slot): Condition[] => {
    if (slot.kind !== 'slot' || slot.state !== 'agreed') return []
    const { bay, assembly, from, to } = slot
    const about = what === 'bay' ? bay : assembly
    return [{ ...plain(about), rule: 'slot-taken', what, bay, from, to, by: null }]
  })
}
