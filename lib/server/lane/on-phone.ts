import type { CommandName } from '../../record/command-names.ts'
import type { DeviceNeeds } from '../../record/device-needs.ts'
import { NOBODY } from '../../record/ids.ts'
import { weightOf } from '../../record/weight-of.ts'
import type { Memberships, SessionActor } from './actor.ts'

/** What a shop's phone must ask before a press is decided; null where it may go its way, as it does for who is signed in. */
export function phoneNeeds(
  { phone, person, code }: SessionActor,
  command: CommandName,
  memberships: Memberships,
): DeviceNeeds | null {
  if (phone === undefined) return null
  if (person === NOBODY || !memberships.has(phone.shop)) return 'hand'
  switch (weightOf[command]) {
    case 'press':
      return null
    case 'proof':
      return 'own session'
    case 'signature':
      if (code === 'right') return null
      if (code === 'none') return 'first code'
      return code === 'wrong' ? 'right code' : 'code'
  }
}
