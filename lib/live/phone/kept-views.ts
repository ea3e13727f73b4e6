import type { PersonId } from '../../record/ids.ts'
import { withLaterFields } from '../../record/later-fields.ts'
import type { KeptView, PhoneStore } from './phone-store.ts'

/** How many projects and shops a phone keeps: those that were seen last. */
const KEEPS_MOST = 20

/** All of a person's in the index `lately`, oldest first. */
const ofPerson = (person: PersonId): IDBKeyRange => IDBKeyRange.bound([person], [person, []])

/**
 * Keeps records as one person sees them. What was not seen for long goes, and what another person's eyes saw on this phone goes at
 * once.
 */
export async function keepViews(phone: PhoneStore, views: readonly KeptView[]): Promise<void> {
  const [first] = views
  if (first === undefined) return
  const write = phone.transaction('views', 'readwrite')
  for (const view of views) void write.store.put(await withDaySheet(view, write.store))
  // Keys only: a record weighs some hundred kB.
  const own = await write.store.index('lately').getAllKeys(ofPerson(first.person))
  const stays = new Set(own.slice(-KEEPS_MOST))
  const all = await write.store.getAllKeys()
  for (const record of all) if (!stays.has(record)) void write.store.delete(record)
  await write.done
}

/** A visit to another screen of the shop does not take away what its day sheet had. */
async function withDaySheet(
  view: KeptView,
  store: { readonly get: (record: string) => Promise<KeptView | undefined> },
): Promise<KeptView> {
  if (view.kind !== 'shop' || view.projects !== null) return view
  const before = await store.get(view.record)
  return before?.kind === 'shop' && before.person === view.person
    ? { ...view, projects: before.projects }
    : view
}

/** Everything that this phone keeps for a person, what was seen last first. */
export const keptFor = async (phone: PhoneStore, person: PersonId): Promise<readonly KeptView[]> =>
  (await phone.getAllFromIndex('views', 'lately', ofPerson(person))).toReversed().map(ofToday)

/** A view that an older program kept, as this one reads it. */
const ofToday = (kept: KeptView): KeptView =>
  kept.kind === 'shop'
    ? kept
    : { ...kept, view: { ...kept.view, entities: kept.view.entities.map(withLaterFields) } }

/** Forgets a record, or all of them. */
export const forgetViews = (phone: PhoneStore, record?: string): Promise<void> =>
  record === undefined ? phone.clear('views') : phone.delete('views', record)
