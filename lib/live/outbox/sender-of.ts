import type { DeviceId, PersonId } from '../../record/ids.ts'
import type { Unsent } from '../phone/phone-store.ts'

/** Who is signed in: a person, or a shop's phone for whichever of its hands. */
export type Sender = PersonId | DeviceId

/** Whose session a press goes out by. */
export const senderOf = ({ device, person }: Pick<Unsent, 'device' | 'person'>): Sender =>
  device ?? person
