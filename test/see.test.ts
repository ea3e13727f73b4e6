import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { ProjectView } from '../lib/command/wire.ts'
import type { Entity, Stub } from '../lib/record/entity.ts'
import type { PersonId } from '../lib/record/ids.ts'
import { openDraft, take } from '../lib/server/lane/draft.ts'
import { loadRecord } from '../lib/server/load.ts'
import { commit, saveOf } from '../lib/server/save.ts'
import { aDatabase, type TestDatabase } from './a-database.ts'
import { aBrowser, aYard, changesOf, following, type TestYard } from './a-yard.ts'
import { aKey, anActor, anId, aStage, at, lead, leadShop, project, trimShop } from './builders.ts'
import { aPool, plant } from './plant.ts'
import { cast, personOf, projectSamples } from './see-cast.ts'
import { samples } from './see-samples.ts'
import { columns, fields, whoSees } from './see-table.ts'

let database: TestDatabase
let pool: pg.Pool
let yard: TestYard

/** A stage of the trimmer's that waits for a yes between the castings shop and the lead. */
const seats = aStage({
  id: anId('stg', 'seats'),
  party: trimShop,
  assemblies: [],
  changeOrder: anId('cho', 'liners'),
})

beforeAll(async () => {
  database = await aDatabase()
  pool = aPool(database.url)
  await plant(pool, [...Object.values(samples), ...cast, seats])
  yard = await aYard(database.url)
})
afterAll(async () => {
  await yard.close()
  await pool.end()
  await database.drop()
})

/** Another node changes these entities: nothing of them is new but their version. */
async function touch(entities: readonly Entity[]): Promise<number> {
  const current = await loadRecord(pool, project)
  const book = await loadRecord(pool, leadShop)
  if (current === null || book === null) throw new Error('The records are not there.')
  const draft = openDraft([current, book])
  const actor = anActor(lead)
  take(
    draft,
    {
      home: project,
      who: actor,
      as: actor,
      name: 'project.describe',
      input: {},
      key: aKey(),
      payloadHash: '0'.repeat(64),
      happenedAt: at(1),
      now: null,
      expected: new Map(),
      creates: false,
      jobs: [],
      settle: () => {},
      fail: () => {},
    },
    project,
    { actor, at: at(1), happenedAt: at(1) },
    entities,
    () => 'salt',
  )
  await commit(pool, 'another node', saveOf(draft))
  return current.record.version + 1
}

const people = columns.flatMap((column, i) =>
  column === 'guest' ? [] : [{ column, i, person: personOf[column] }],
)

/** What the table says that this column sees of the samples, by id. */
function expected(i: number): { readonly entities: object; readonly stubs: readonly string[] } {
  const entities: { [id: string]: object } = {}
  const stubs: string[] = []
  for (const [name, sample] of projectSamples) {
    const cell = whoSees[name]?.split(' ')[i]
    const narrower = fields[sample.kind].split('|')[1]?.trim().split(' ') ?? []
    const nulls = Object.fromEntries(narrower.map((field) => [field, null]))
    if (cell === 'all') entities[sample.id] = sample
    if (cell === 'open') entities[sample.id] = { ...sample, ...nulls }
    if (cell === 'stub') stubs.push(sample.id)
  }
  return { entities, stubs: stubs.sort() }
}

const ids = new Set<string>(projectSamples.map(([, { id }]) => id))
const ofSamples = (entities: readonly Entity[]) =>
  Object.fromEntries(entities.filter(({ id }) => ids.has(id)).map((entity) => [entity.id, entity]))
const stubsOf = (stubs: readonly Stub[]) =>
  stubs
    .map(({ id }) => id)
    .filter((id) => ids.has(id))
    .sort()

describe('what leaves the server', () => {
  it.each(people)('over HTTP, to $column, is what the table says', async ({ i, person }) => {
    const browser = await aBrowser(yard, person)
    const response = await browser.get(`/api/projects/${project}`)
    expect(response.status).toBe(200)
    const view: ProjectView = await response.json()
    expect(ofSamples(view.entities)).toEqual(expected(i).entities)
    expect(stubsOf(view.stubs)).toEqual(expected(i).stubs)
    const changes = await (await browser.get(`/api/projects/${project}/changes?after=0`)).json()
    expect(ofSamples(changes.entities)).toEqual(expected(i).entities)
    expect(stubsOf(changes.stubs)).toEqual(expected(i).stubs)
  })

  it('over the socket, to each of them at once, is what the table says', async () => {
    const listening = await Promise.all(
      people.map(async ({ column, i, person }) => {
        const socket = (await aBrowser(yard, person)).socket()
        const changes = changesOf(socket)
        expect(await following(socket, project)).toBe(1)
        return { column, i, socket, changes }
      }),
    )
    const version = await touch(projectSamples.map(([, sample]) => sample))
    for (const { column, i, socket, changes } of listening) {
      const changed = await changes.until(version)
      expect({ column, ...ofSamples(changed.entities) }).toEqual({
        column,
        ...expected(i).entities,
      })
      expect(stubsOf(changed.stubs)).toEqual(expected(i).stubs)
      socket.close()
    }
  })

  it('says nothing of a project to somebody who has no part in it, nor to nobody', async () => {
    await pool.query(
      `insert into "Person" ("id", "name", "email") values ('psn_stranger', 'A', 'a@b.example')`,
    )
    const stranger = await aBrowser(yard, anId('psn', 'stranger'))
    for (const path of [
      '',
      '/changes?after=0',
      '/journal',
      '/as-of?at=2026-03-02T08:00:00.000Z',
      '/build-order.csv',
    ]) {
      expect((await stranger.get(`/api/projects/${project}${path}`)).status).toBe(404)
      expect((await fetch(`${yard.url}/api/projects/${project}${path}`)).status).toBe(401)
    }
    const socket = stranger.socket()
    expect(await following(socket, project)).toBeNull()
    socket.close()
  })

  it('in a refusal, of what is hidden, is that it stands in the way and who can clear it', async () => {
    const refused = async (person: PersonId) =>
      (await (await aBrowser(yard, person)).command('stage.start', { stage: seats.id })).json()
    const { conditions } = await refused(personOf.trim)
    expect(conditions).toEqual([
      {
        rule: 'unknown',
        entity: 'cho_liners',
        root: 'cho_liners',
        since: null,
        concedable: false,
        clearedBy: expect.arrayContaining([lead]),
        clearedWith: null,
      },
    ])
  })
})
