import { NOBODY } from '../../record/ids.ts'
import type { Looker } from '../lane/actor.ts'
import type { Devices, ShopDevice } from './devices.ts'
import type { Session, Sessions } from './session.ts'

/** A shop's phone. Nobody is signed in on it: whoever works there says so with each press. */
export type OnPhone = Looker & { readonly phone: ShopDevice }

/** What tells who looks: sessions of persons, and the phones of shops. */
export type Doorkeepers = {
  readonly sessions: Pick<Sessions, 'of'>
  readonly devices: Pick<Devices, 'of'>
}

/** Who sent this `Cookie` header, a person or a shop's phone: the phone first, for it sees less. */
export async function lookerOf(
  cookie: string | null | undefined,
  { sessions, devices }: Doorkeepers,
): Promise<OnPhone | Session | null> {
  const phone = await devices.of(cookie)
  return phone === null ? sessions.of(cookie) : { person: NOBODY, phone }
}
