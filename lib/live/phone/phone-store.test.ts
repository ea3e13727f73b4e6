import 'fake-indexeddb/auto'
import { deleteDB, openDB } from 'idb'
import { expect, it } from 'vitest'
import { note } from '../../../test/unsent-notes.ts'
import { openPhoneStore } from './phone-store.ts'

it('a tab of the former program holds up no newer one, and loses nothing that it was writing', async () => {
  const former = await openPhoneStore()
  const { name, version } = former
  const writing = former.add('unsent', note('Pressed a moment before.'))
  const newer = await openDB(name, version + 1)
  await writing
  expect(await newer.count('unsent')).toBe(1)
  newer.close()
  await deleteDB(name)
})
