import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { JournalEntry } from '../lib/journal/journal-entry.ts'
import { replayProject, upTo } from '../lib/journal/replay.ts'
import { readScopeKey } from '../lib/journal/scope-key.ts'
import { withhold } from '../lib/journal/withhold.ts'
import type { CommandName } from '../lib/record/command-names.ts'
import type { Json } from '../lib/record/condition.ts'
import type { Entity, Kind } from '../lib/record/entity.ts'
import { isKind } from '../lib/record/entity.ts'
import type { PersonId, ProjectId, ShopId } from '../lib/record/ids.ts'
import { Instant } from '../lib/record/scalars.ts'
import { type AnyRecord, loadRecord, readEntries } from '../lib/server/load.ts'
import { type Commands, openCommands } from '../lib/server/run-command.ts'
import { aDatabase, type TestDatabase } from './a-database.ts'
import { anId } from './builders.ts'
import { aPool, done, journalAgainstTables, plantPersons, signedInAs } from './plant.ts'

const anna = anId('psn', 'anna')
const bex = anId('psn', 'bex')

let database: TestDatabase
let pool: pg.Pool
let commands: Commands
let hours = 0
/** What is played, an hour after the press before it, over a month that is past. */
async function play(
  person: PersonId,
  name: CommandName,
  input: Json,
  record?: ProjectId | ShopId,
): Promise<readonly Entity[]> {
  const at = Instant.parse(new Date(Date.UTC(2026, 2, 2, 8) + hours++ * 3_600_000).toISOString())
  const who = { ...signedInAs(person), proof: 'demonstration' as const, provedAt: at }
  const as = { ...who, role: 'manager' as const, party: null, shop: null }
  const outcome = await commands.enter({
    who,
    name,
    input,
    at,
    ...(record && { record }),
    ...(name === 'shop.create' && { as }),
  })
  return done(outcome).moves[0]?.move.entities ?? []
}
function only<K extends Kind>(entities: readonly Entity[], kind: K) {
  const found = entities.find(isKind(kind))
  if (found === undefined) throw new Error(`No ${kind} was made.`)
  return found
}

let car: ProjectId
let shops: readonly [ShopId, ShopId]

/** Two shops and a car, through the one door, with every sort of secret in its journal. */
beforeAll(async () => {
  database = await aDatabase()
  pool = aPool(database.url)
  commands = openCommands(pool)
  await plantPersons(pool, [anna, bex])
  const shop = (name: string) => ({
    name,
    currency: 'GBP',
    timeZone: 'Europe/London',
    taxRegistered: true,
    taxRate: 2000,
  })
  const tarn = only(await play(anna, 'shop.create', shop('Tarn Lane Coachworks')), 'shop').id
  const engines = only(await play(bex, 'shop.create', shop('Bexwater Engines')), 'shop').id
  shops = [tarn, engines]
  const bay = only(await play(bex, 'bay.add', { name: 'Bench', type: 'bench' }, engines), 'bay').id
  const begun = await play(anna, 'project.create', {
    shop: tarn,
    name: 'Averley Three-Litre',
    year: 1961,
    owner: 'Ines Halloran',
  })
  car = only(begun, 'project').id
  const lead = only(begun, 'party').id
  const added = await play(
    anna,
    'party.add',
    { name: 'Bexwater Engines', role: 'shop', shop: engines },
    car,
  )
  const party = only(added, 'party').id
  const custody = { name: 'Engine', pieces: 1, custodian: lead }
  const engine = only(await play(anna, 'assembly.add', custody, car), 'assembly').id
  const price = { text: 'Rebuild', type: 'fixed', net: 410_000, taxRate: 2000 }
  await play(bex, 'estimate.add', { party, lines: [price] })
  const raised = await play(bex, 'changeOrder.raise', {
    party,
    title: 'Liners',
    reason: 'found',
    bears: 'owner',
    lines: [{ text: 'Six dry liners', net: 88_000, taxRate: 2000 }],
  })
  await play(bex, 'changeOrder.send', { changeOrder: only(raised, 'changeOrder').id })
  const prepared = await play(anna, 'handover.prepare', { assemblies: [engine], to: party })
  const handover = only(prepared, 'handover').id
  await play(anna, 'handover.release', { handover, condition: 'Complete, seized' })
  await play(bex, 'handover.receive', {
    handover,
    outcome: 'accepted with remarks',
    remarks: 'Sump cracked',
    receivedByName: 'A. Carter',
  })
  const note = { on: engine, sharing: 'shop', text: 'Crank may be past saving' }
  await play(bex, 'note.write', note)
  const span = { from: '2026-05-04T08:00:00.000Z', to: '2026-05-08T17:00:00.000Z' }
  await play(bex, 'slot.claim', { assembly: engine, bay, shop: engines, ...span })
})
afterAll(async () => {
  await pool.end()
  await database.drop()
})

/** Runs the script that knows nothing of ours on an export. */
function verifyIndependently(entries: readonly JournalEntry[]) {
  const folder = mkdtempSync(join(tmpdir(), 'fettleyard-export-'))
  const file = join(folder, 'journal.json')
  writeFileSync(file, JSON.stringify(entries))
  const { status, stdout } = spawnSync(process.execPath, ['test/verify-independently.mjs', file])
  rmSync(folder, { recursive: true })
  return { status, said: stdout.toString().trim() }
}

/** Versions lie in layers where steps changed them. */
const inOneForm = (record: AnyRecord | undefined) =>
  record && { ...record, versions: new Map(record.versions) }

describe('a journal made by the one door', () => {
  it('replays to the tables, byte for byte, of the car and of both shops', async () => {
    for (const id of [car, ...shops]) {
      const { verified, tables, replayed, entries } = await journalAgainstTables(pool, id)
      expect(verified).toMatchObject({ holds: true })
      expect(entries.length).toBeGreaterThan(0)
      expect(replayed).toBe(tables)
    }
  })

  it('is the same on the cached record as on one read anew', async () => {
    for (const id of [car, ...shops]) {
      const [held, read] = [commands.records.peek(id), await loadRecord(pool, id)]
      expect(inOneForm(held?.record)).toEqual(inOneForm(read?.record))
    }
  })

  it("has the claim in the car's journal and in the shop's, under one command", async () => {
    const [, engines] = shops
    const [ours, theirs] = await Promise.all([readEntries(pool, car), readEntries(pool, engines)])
    expect(ours.at(-1)?.command).toBe('slot.claim')
    expect(theirs.at(-1)?.key).toBe(ours.at(-1)?.key)
  })

  it('tells how the car stood on a day', async () => {
    const entries = await readEntries(pool, car)
    const released = entries.find(({ command }) => command === 'handover.release')
    const then = replayProject(car, upTo(entries, released?.at ?? Instant.parse('')))
    expect([...then.handovers.rows.values()].map(({ state }) => state)).toEqual(['released'])
    expect(then.slots.rows.size).toBe(0)
    const [engine] = then.assemblies.rows.values()
    const now = replayProject(car, entries).assemblies.rows.get(engine?.id ?? '')
    expect(now?.custodian).not.toBe(engine?.custodian)
  })

  it('can be checked by a script that is not ours, whole or as one reader has it', async () => {
    const entries = await readEntries(pool, car)
    expect(verifyIndependently(entries)).toMatchObject({ status: 0 })
    const open = entries.map((entry) =>
      withhold(entry, (scope) => readScopeKey(scope).scope === 'open'),
    )
    expect(JSON.stringify(open)).not.toContain('Crank may be past saving')
    expect(JSON.stringify(open)).not.toContain('"net"')
    const checked = verifyIndependently(open)
    expect(checked.status).toBe(0)
    expect(checked.said).toContain(entries.at(-1)?.hash)
  })

  it('does not pass that script with a price altered, an entry taken out or a hand exchanged', async () => {
    const entries = await readEntries(pool, car)
    const cheaper: JournalEntry[] = JSON.parse(JSON.stringify(entries).replaceAll('88000', '68000'))
    expect(verifyIndependently(cheaper).said).toMatch(
      /^entry \d+: its part (money|managers):\S+ was altered$/,
    )
    expect(verifyIndependently(entries.filter((_, n) => n !== 3)).status).toBe(1)
    const exchanged = entries.map((entry, n) => (n === 4 ? { ...entry, person: anna } : entry))
    expect(verifyIndependently(exchanged)).toMatchObject({
      status: 1,
      said: 'entry 5: it was altered',
    })
  })
})
