import type { PersonId } from '../../record/ids.ts'
import { openPhoneStore } from '../phone/phone-store.ts'
import { unsentStore } from './unsent-store.ts'

/** How many presses of a person lie on this phone. */
export interface UnsentCount {
  readonly person: PersonId
  readonly name: string
  readonly count: number
}

/** Counts what is unsent on this phone, by person; for pages without the queue, such as the door. Empty where nothing can be kept. */
export async function unsentCounts(): Promise<readonly UnsentCount[]> {
  try {
    const phone = await openPhoneStore()
    const items = await unsentStore(phone).all()
    phone.close()
    const byPerson = Map.groupBy(items, ({ person }) => person)
    return [...byPerson].map(([person, theirs]) => ({
      person,
      name: theirs[0]?.personName ?? '',
      count: theirs.length,
    }))
  } catch {
    return []
  }
}
