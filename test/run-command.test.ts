import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { verifyJournal } from '../lib/journal/verify.ts'
import type { Entity } from '../lib/record/entity.ts'
import type { PersonId } from '../lib/record/ids.ts'
import { freshKey } from '../lib/server/fresh-key.ts'
import type { SessionActor } from '../lib/server/lane/actor.ts'
import type { AnyMove, Outcome } from '../lib/server/lane/outcome.ts'
import { loadRecord, readEntries } from '../lib/server/load.ts'
import { type Commands, openCommands } from '../lib/server/run-command.ts'
import { aDatabase, type TestDatabase } from './a-database.ts'
import {
  anActor,
  anAssembly,
  anEngine,
  anId,
  aProject,
  aShell,
  aStage,
  engineShop,
  lead,
  leadShop,
  project,
  theParties,
} from './builders.ts'
import { aPool, plant } from './plant.ts'
import { aMembership, aShop } from './shop-builders.ts'

let database: TestDatabase
let pool: pg.Pool
let commands: Commands

const session = (person: PersonId): SessionActor => ({
  person,
  proof: 'password',
  provedAt: null,
})
const leadPerson = anActor(lead).person
const enginePerson = anActor(engineShop).person
const stage = aStage({ id: anId('stg', 'build'), assemblies: [anEngine().id] })

/** The record that each test begins with: the four parties, shell, engine, a stage of the lead. */
const beginning: Entity[] = [
  aProject(),
  ...theParties(),
  ...[leadShop, anId('shp', 'engines'), anId('shp', 'trim')].map((id) => aShop({ id })),
  aMembership({ id: anId('mbr', 'lead'), shop: leadShop, person: leadPerson }),
  aMembership({ id: anId('mbr', 'eng'), shop: anId('shp', 'engines'), person: enginePerson }),
  aShell(),
  anEngine(),
  stage,
]

beforeAll(async () => {
  database = await aDatabase()
  pool = aPool(database.url)
  await plant(pool, beginning)
  commands = openCommands(pool)
})
afterAll(async () => {
  await pool.end()
  await database.drop()
})

const now = () => new Date().toISOString()
const add = (name: string, over: object = {}) => ({
  name: 'assembly.add',
  input: { name, pieces: 1, custodian: lead },
  key: freshKey(),
  happenedAt: now(),
  expected: { [project]: 1 },
  ...over,
})
const versionOf = async () => (await loadRecord(pool, project))?.record.version
const done = (outcome: Outcome) => {
  if (outcome.is !== 'done') throw new Error(JSON.stringify(outcome))
  return outcome
}

describe('runCommand', () => {
  it('saves what a command changes with an entry of the journal, and tells who follows', async () => {
    const told: AnyMove[] = []
    const stop = commands.onCommit((move) => told.push(move))
    const before = await versionOf()
    const outcome = done(await commands.run(session(leadPerson), add('Gearbox')))
    stop()
    expect(await versionOf()).toBe((before ?? 0) + 1)
    const [made] = outcome.moves[0]?.move.entities ?? []
    expect(made).toMatchObject({ kind: 'assembly', name: 'Gearbox' })
    expect(told.map(({ move }) => move.entities)).toEqual([[made]])
    const loaded = await loadRecord(pool, project)
    expect(loaded?.record.versions.get(made?.id ?? '')).toBe(loaded?.record.version)
    expect(verifyJournal(await readEntries(pool, project))).toMatchObject({ holds: true })
  })

  it('gives a phone that asks again the same answer and changes nothing', async () => {
    const request = add('Radiator')
    const first = done(await commands.run(session(leadPerson), request))
    const version = await versionOf()
    const second = done(await commands.run(session(leadPerson), request))
    expect(second.again).toBe(true)
    expect(second.moves[0]?.move.entities).toEqual(first.moves[0]?.move.entities)
    expect(second.moves[0]?.move.to).toBe(first.moves[0]?.move.to)
    expect(await versionOf()).toBe(version)
  })

  it('gives it the same answer where a second judgement would be a refusal', async () => {
    const request = { ...add(''), name: 'stage.start', input: { stage: stage.id } }
    done(await commands.run(session(leadPerson), request))
    expect(await commands.run(session(leadPerson), request)).toMatchObject({
      is: 'done',
      again: true,
    })
    const anew = { ...request, key: freshKey() }
    expect(await commands.run(session(leadPerson), anew)).toMatchObject({
      is: 'refused',
      conditions: [{ rule: 'state' }],
    })
  })

  it('is not taken in by a key that was used for something else', async () => {
    const request = add('Dynamo')
    done(await commands.run(session(leadPerson), request))
    const other = { ...request, input: { ...request.input, name: 'Starter' } }
    expect(await commands.run(session(leadPerson), other)).toEqual({ is: 'key reused' })
  })

  it("lets nobody overwrite what another person's key made", async () => {
    const request = add('Wiper')
    const made = done(await commands.run(session(leadPerson), request)).moves[0]?.move.entities[0]
    const second = anId('psn', 'secondlead')
    await plantManager(second)
    const theirs = { ...request, input: { ...request.input, name: 'Ours now' } }
    expect(await commands.run(session(second), theirs)).toEqual({ is: 'key reused' })
    const elsewhere = await commands.enter({
      who: session(second),
      as: { ...session(second), role: 'manager', party: null, shop: leadShop },
      name: 'assembly.add',
      input: theirs.input,
      key: request.key,
    })
    expect(elsewhere.is).not.toBe('done')
    const record = (await loadRecord(pool, project))?.record
    const found = record && 'assemblies' in record ? record.assemblies.rows : undefined
    expect(found?.get(anId('asm', made?.id.slice(4) ?? ''))).toEqual(made)
  })

  it('judges a refused command anew when it is sent again', async () => {
    const other = aStage({ id: anId('stg', 'build') })
    const request = { ...add(''), name: 'stage.resume', input: { stage: other.id } }
    expect((await commands.run(session(leadPerson), request)).is).toBe('refused')
    const pause = { ...add(''), name: 'stage.pause', input: { stage: other.id } }
    const paused = await commands.run(session(leadPerson), pause)
    expect(paused.is).toBe('done')
    expect((await commands.run(session(leadPerson), request)).is).toBe('done')
  })

  it('tells a stranger nothing, and a shop hand without the say no', async () => {
    const stranger = session(anId('psn', 'stranger'))
    expect(await commands.run(stranger, add('Theirs'))).toMatchObject({ is: 'missing' })
    expect(await commands.run(session(enginePerson), add('Not theirs'))).toEqual({
      is: 'forbidden',
    })
  })

  it('names the field that is wrong', async () => {
    const run = (over: object) => commands.run(session(leadPerson), add('x', over))
    expect(await run({ key: 'seven' })).toMatchObject({ is: 'invalid', issues: [{ field: 'key' }] })
    expect(await run({ name: 'car.fly' })).toMatchObject({ issues: [{ field: 'name' }] })
    expect(await run({ happenedAt: '2999-01-01T00:00:00.000Z' })).toMatchObject({
      issues: [{ field: 'happenedAt' }],
    })
    expect(await run({ input: { name: 'a\0b' } })).toMatchObject({
      issues: [{ field: 'input.name' }],
    })
    expect(await run({ input: { name: '' } })).toMatchObject({ is: 'invalid' })
    expect(await run({ expected: {}, input: {} })).toMatchObject({
      issues: [{ field: 'expected' }],
    })
  })

  it('finds the record by what the input names', async () => {
    const request = {
      ...add('', { expected: undefined }),
      name: 'assembly.describe',
      input: { assembly: anEngine().id, name: 'Straight six', pieces: 1 },
    }
    const { expected: _, ...without } = request
    expect((await commands.run(session(leadPerson), without)).is).toBe('done')
    const gone = { ...without, key: freshKey(), input: { ...request.input, assembly: 'asm_gone' } }
    expect((await commands.run(session(leadPerson), gone)).is).toBe('invalid')
  })

  it('keeps out a change that rests on an older version of the same thing, by somebody else', async () => {
    const other = anAssembly({ name: 'Door' })
    const made = done(await commands.run(session(leadPerson), add('Door'))).moves[0]?.move
    const id = made?.entities[0]?.id ?? other.id
    const seen = { [project]: made?.to ?? 0 }
    const rename = (name: string) => ({
      ...add(''),
      name: 'assembly.describe',
      input: { assembly: id, name, pieces: 1 },
      expected: seen,
    })
    done(await commands.run(session(leadPerson), rename('Near door')))
    // The same person's next press rests on the same version: it comes from the same outbox.
    done(await commands.run(session(leadPerson), rename('Near-side door')))
    const secondLead = anId('psn', 'secondlead')
    expect(await commands.run(session(secondLead), rename('Left door'))).toMatchObject({
      is: 'refused',
      conditions: [{ rule: 'stale', entity: id }],
    })
    const elsewhere = { ...add('Boot lid'), expected: seen }
    expect((await commands.run(session(secondLead), elsewhere)).is).toBe('done')
  })

  it('never gives an entry an earlier time than the one before', async () => {
    const behind = openCommands(pool, { clock: () => Date.UTC(2020, 0, 1) })
    const request = add('Clock', { happenedAt: '2020-01-01T00:00:00.000Z' })
    done(await behind.run(session(leadPerson), request))
    const entries = await readEntries(pool, project)
    expect(verifyJournal(entries)).toMatchObject({ holds: true })
    expect(entries.at(-1)?.happenedAt).toBe('2020-01-01T00:00:00.000Z')
  })

  it('takes many commands that wait in one save, in order', async () => {
    const before = (await versionOf()) ?? 0
    const names = Array.from({ length: 250 }, (_, i) => `Piece ${i}`)
    await commands.catchUp(project)
    const outcomes = await Promise.all(
      names.map((name) => commands.run(session(leadPerson), add(name))),
    )
    expect(outcomes.map((o) => done(o).moves[0]?.move.to)).toEqual(
      names.map((_, i) => before + i + 1),
    )
    expect(verifyJournal(await readEntries(pool, project))).toMatchObject({ holds: true })
  })

  it('answers each by itself where one of many is refused by the database', async () => {
    const far = (year: string) => ({
      ...add(''),
      name: 'window.open',
      input: {
        assembly: aShell().id,
        from: `${year}-01-01T00:00:00.000Z`,
        to: `${year}-02-01T00:00:00.000Z`,
      },
    })
    const requests = [add('Before'), far('0000'), add('After'), far('2031')]
    const outcomes = await Promise.all(
      requests.map((request) => commands.run(session(leadPerson), request)),
    )
    expect(outcomes.map(({ is }) => is)).toEqual(['done', 'invalid', 'done', 'done'])
  })
})

async function plantManager(person: PersonId): Promise<void> {
  await pool.query(
    `insert into "Person" ("id", "name", "email") values ($1, 'Second', 'second@yard.example')`,
    [person],
  )
  await pool.query(
    `insert into "Membership" ("id", "shop", "person", "role", "since", "version", "made")
     values ('mbr_second', $1, $2, 'manager', now(), 1, 1)`,
    [leadShop, person],
  )
  commands.memberships.forget(person)
}
