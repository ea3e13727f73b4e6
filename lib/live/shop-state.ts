import type { Changed, People, ShopView } from '../command/wire.ts'
import type { MembershipRole } from '../record/entities/people.ts'
import type { PersonId } from '../record/ids.ts'
import { emptyShopRecord, type ShopRecord, shopAfter } from '../record/project-record.ts'
import type { Instant } from '../record/scalars.ts'

/** A shop book as this phone holds it. */
export interface ShopState {
  readonly book: ShopRecord
  readonly role: MembershipRole
  readonly person: PersonId
  readonly people: People
  readonly projects: ShopView['projects']
  readonly epoch: number
  readonly asOf: Instant
}

/** What a phone holds, from what the server sent at once. */
export function shopStateOf(view: ShopView): ShopState {
  const { version, entities } = view
  return {
    book: shopAfter(emptyShopRecord(view.record), { version, entities }),
    role: view.role,
    person: view.person,
    people: view.people,
    projects: view.projects,
    epoch: view.epoch,
    asOf: view.now,
  }
}

/** The shop book after a change that follows on it. */
export function shopStateAfter(state: ShopState, changed: Changed, now: Instant): ShopState {
  const { to: version, entities, stubs } = changed
  return {
    ...state,
    book: shopAfter(state.book, { version, entities, stubs }),
    people: { ...state.people, ...changed.people },
    asOf: now,
  }
}
