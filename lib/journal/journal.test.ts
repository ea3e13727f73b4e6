import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  aChangeLine,
  aChangeOrder,
  aDecision,
  aHandover,
  aKey,
  anActor,
  anEngine,
  anId,
  aPart,
  aProject,
  aStage,
  at,
  engineShop,
  lead,
  owner,
  project,
  theParties,
  trimShop,
} from '../../test/builders.ts'
import { canonicalJson } from '../record/canonical-json.ts'
import type { Note } from '../record/entities/things.ts'
import type { Entity } from '../record/entity.ts'
import { Minor } from '../record/scalars.ts'
import { makeEntry } from './entry.ts'
import { BEFORE_FIRST, type JournalEntry } from './journal-entry.ts'
import { joinParts, partsOf } from './parts.ts'
import { replayProject, upTo } from './replay.ts'
import { readScopeKey } from './scope-key.ts'
import { verifyJournal } from './verify.ts'
import { erasePersonal, withhold } from './withhold.ts'

let salts = 0
const newSalt = () => `salt${++salts}`

const aNote = (over: Partial<Note> = {}): Note => ({
  kind: 'note',
  id: anId('nte', 'one'),
  project,
  on: anId('stg', 'one'),
  type: 'note',
  sharing: 'shared',
  business: null,
  text: 'Bore 2 measured twice',
  party: lead,
  person: anId('psn', 'jory'),
  at: at(1),
  withdrawnAt: null,
  ...over,
})

/** A journal of those steps, an hour apart. */
function aJournal(...steps: Entity[][]): JournalEntry[] {
  const entries: JournalEntry[] = []
  for (const entities of steps) {
    entries.push(
      makeEntry(
        {
          record: project,
          sequence: entries.length + 1,
          at: at(entries.length),
          happenedAt: at(entries.length),
          actor: anActor(lead),
          command: 'note.write',
          key: aKey(),
          input: { said: entries.length },
          entities,
          previousHash: entries.at(-1)?.hash ?? BEFORE_FIRST,
        },
        newSalt,
      ),
    )
  }
  return entries
}
const scopesOf = (...entities: Entity[]) => partsOf({}, entities, lead, newSalt).map((p) => p.scope)
const inputScope = (...entities: Entity[]) =>
  partsOf({ text: 'as typed' }, entities, lead, newSalt).find((p) => p.value?.input !== undefined)
    ?.scope

describe('an entry in parts', () => {
  it("keeps a change order's title from those whose business it isn't, and its figures from hands", () => {
    const order = aChangeOrder({ party: engineShop, shown: '{}' })
    expect(scopesOf(order, aChangeLine({ changeOrder: order.id, party: engineShop }))).toEqual([
      `business:${engineShop}`,
      `money:${engineShop}`,
    ])
  })

  it("keeps a shop's own notes with the shop", () => {
    expect(scopesOf(aNote({ sharing: 'shop', party: trimShop }))).toEqual([`private:${trimShop}`])
  })

  it("names the chooser as a further reader of another party's decision", () => {
    expect(scopesOf(aDecision({ party: engineShop, chooser: owner }))).toEqual([
      `business:${engineShop}+${owner}`,
    ])
  })

  it("puts the project's own standing consent under the project", () => {
    expect(scopesOf(aProject())).toEqual([`money:${project}`, 'open'])
  })

  it('keeps an input as secret as the most secret entity that it makes', () => {
    expect(inputScope(aStage())).toBe('open')
    expect(inputScope(aPart({ price: null }))).toBe('open')
    expect(inputScope(aStage(), aPart({ price: Minor.parse(100), party: trimShop }))).toBe(
      `money:${trimShop}`,
    )
    expect(inputScope(aHandover({ receivedByName: 'A. Driver' }))).toBe('personal')
  })

  it('keeps an input with secrets of two parties with whoever gave it', () => {
    const one = aNote({ sharing: 'shop', party: trimShop })
    const two = aNote({ id: anId('nte', 'two'), sharing: 'shop', party: engineShop })
    expect(inputScope(one, two)).toBe(`private:${lead}`)
  })

  it('salts each part, so that equal values have unlike hashes', () => {
    const hashes = [1, 2].map(() => partsOf({}, [aNote()], lead, newSalt)[0]?.hash)
    expect(hashes[0]).not.toBe(hashes[1])
  })

  it('gives back every entity as it was, whatever was typed', () => {
    const entity = fc.oneof(
      fc
        .record({ text: fc.string({ minLength: 1 }), id: fc.nat() })
        .map(
          ({ text, id }): Entity =>
            aNote({ id: anId('nte', `${id}`), text: `a${text}`, sharing: 'shop' }),
        ),
      fc.record({ price: fc.option(fc.maxSafeInteger()), id: fc.nat() }).map(
        ({ price, id }): Entity =>
          aPart({
            id: anId('prt', `${id}`),
            price: price === null ? null : Minor.parse(price),
            party: trimShop,
          }),
      ),
      fc.record({ name: fc.option(fc.string({ minLength: 1 })), id: fc.nat() }).map(
        ({ name, id }): Entity =>
          aHandover({
            id: anId('hnd', `${id}`),
            receivedByName: name === null ? null : `x${name}`,
          }),
      ),
      fc
        .double({ noNaN: true, noDefaultInfinity: true, min: 0, max: 100_000 })
        .map((hours): Entity => aStage({ hoursLikely: hours })),
      fc.nat().map((id): Entity => aChangeOrder({ id: anId('cho', `${id}`), shown: '{"a":1}' })),
    )
    const byId = (entities: readonly Entity[]) =>
      new Map(entities.map((one) => [one.id, canonicalJson(one)]))
    fc.assert(
      fc.property(fc.uniqueArray(entity, { selector: (one) => one.id }), (entities) => {
        // Through JSON, as the database and an export have it.
        const parts = JSON.parse(JSON.stringify(partsOf({}, entities, lead, newSalt)))
        expect(byId(joinParts(parts).entities)).toEqual(byId(entities))
      }),
      { numRuns: 500 },
    )
  })

  it('reads a scope back from its key', () => {
    expect(readScopeKey(`business:${engineShop}+${owner}`)).toEqual({
      scope: 'business',
      whose: engineShop,
      also: [owner],
    })
  })
})

describe('a journal', () => {
  const received = aHandover({
    id: anId('hnd', 'one'),
    receivedByName: 'A. Driver',
    signature: 'M0 0L9 9',
  })
  const journal = aJournal([aProject(), ...theParties()], [anEngine()], [received], [aNote()])

  it('holds from first to last', () => {
    expect(verifyJournal(journal)).toEqual({
      holds: true,
      head: journal.at(-1)?.hash,
      missingParts: 0,
    })
  })

  it('holds for a reader who has a few of its parts', () => {
    const few = journal.map((entry) => withhold(entry, (scope) => scope === 'open'))
    expect(verifyJournal(few)).toMatchObject({ holds: true, missingParts: 2 })
  })

  it("holds after a driver's name and signature were erased, and reads without them", () => {
    const erased = journal.map(erasePersonal)
    expect(verifyJournal(erased)).toMatchObject({ holds: true, missingParts: 1 })
    expect(JSON.stringify(erased)).not.toContain('A. Driver')
    expect(replayProject(project, erased).handovers.rows.get(received.id)).toEqual({
      ...received,
      receivedByName: null,
      signature: null,
    })
  })

  it('names the first entry whose words were altered', () => {
    const altered = journal.map((entry) =>
      JSON.parse(JSON.stringify(entry).replace('Bore 2 measured twice', 'Bore 2 never measured')),
    )
    expect(verifyJournal(altered)).toEqual({
      holds: false,
      sequence: 4,
      why: 'its part open was altered',
    })
  })

  it('names the entry in which somebody else is said to have pressed', () => {
    const other = anId('psn', 'somebody')
    const altered = journal.map((e) => (e.sequence === 2 ? { ...e, person: other } : e))
    expect(verifyJournal(altered)).toEqual({ holds: false, sequence: 2, why: 'it was altered' })
  })

  it('misses an entry that was taken out, at its end too once the head is known', () => {
    expect(verifyJournal(journal.filter(({ sequence }) => sequence !== 2))).toMatchObject({
      holds: false,
      sequence: 3,
    })
    const shorter = verifyJournal(journal.slice(0, -1))
    expect(shorter.holds && shorter.head).not.toBe(journal.at(-1)?.hash)
  })

  it('notices two entries that changed places', () => {
    const [one, two, three, four] = journal
    const swapped = [one, three, two, four].flatMap((entry) => (entry === undefined ? [] : [entry]))
    expect(verifyJournal(swapped)).toMatchObject({ holds: false, sequence: 3 })
  })

  it('replays to the record, and to the record as it stood on a day', () => {
    const now = replayProject(project, journal)
    expect(now.version).toBe(4)
    expect(now.versions.get(received.id)).toBe(3)
    expect([...now.notes.rows.values()]).toEqual([aNote()])
    const then = replayProject(project, upTo(journal, at(1)))
    expect(then.version).toBe(2)
    expect(then.assemblies.rows.size).toBe(1)
    expect(then.handovers.rows.size).toBe(0)
  })
})
