import type { View } from '../record/actor.ts'
import type { PersonId } from '../record/ids.ts'
import type { Instant } from '../record/scalars.ts'

/** Where and when dates and figures are read. `timeZone` is the shop's, `locale` the reader's. */
export interface Place {
  readonly locale: string
  readonly timeZone: string
  readonly now: Instant
}

/** For whom sentences are made: what they see, who they are, how they write, and the names they may know. */
export interface Reader extends Place {
  readonly view: View
  readonly person: PersonId
  readonly people: { readonly [person: string]: string }
  readonly currency: string
}
