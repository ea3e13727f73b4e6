import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Changed, ProjectView } from '../lib/command/wire.ts'
import {
  meets,
  type ProjectState,
  projectStateAfter,
  projectStateOf,
} from '../lib/live/project-state.ts'
import { entitiesOf } from '../lib/record/any-entity.ts'
import { isKind } from '../lib/record/entity.ts'
import { aDatabase, type TestDatabase } from './a-database.ts'
import {
  aBrowser,
  aYard,
  type Browser,
  changesOf,
  following,
  heard,
  type TestYard,
} from './a-yard.ts'
import { at, engineShop, project, shellId } from './builders.ts'
import { aPool, plant } from './plant.ts'
import { cast, personOf } from './see-cast.ts'
import { samples } from './see-samples.ts'

let database: TestDatabase
let pool: pg.Pool
let yard: TestYard
let engines: Browser
let owner: Browser

beforeAll(async () => {
  database = await aDatabase()
  pool = aPool(database.url)
  await plant(pool, [...Object.values(samples), ...cast])
  yard = await aYard(database.url)
  engines = await aBrowser(yard, personOf.engines)
  owner = await aBrowser(yard, personOf.owner)
})
afterAll(async () => {
  await yard.close()
  await pool.end()
  await database.drop()
})

const write = (text: string) =>
  engines.command('note.write', { on: shellId, text, sharing: 'shared' }, project)
const whole = async (): Promise<ProjectView> => (await owner.get(`/api/projects/${project}`)).json()
const since = async (version: number): Promise<Changed> =>
  (await owner.get(`/api/projects/${project}/changes?after=${version}`)).json()
const textsIn = (state: ProjectState): string[] =>
  entitiesOf(state.record).flatMap((entity) => (entity.kind === 'note' ? [entity.text] : []))

describe('a message that was lost', () => {
  it('tells who comes back what was done, and nobody of what they might not see when it was done', async () => {
    const { version } = await whole()
    const order = { party: engineShop, title: 'Rebore', text: 'Two thou under.', reason: 'found' }
    const line = { text: 'Work', net: 10_000, taxRate: 2000 }
    const raised = await engines.command(
      'changeOrder.raise',
      { ...order, bears: 'owner', lines: [line] },
      project,
    )
    expect(raised.status).toBe(200)
    const { changed }: { changed: readonly Changed[] } = await raised.json()
    const draft = changed.flatMap(({ entities }) => entities).find(isKind('changeOrder'))
    expect((await since(version)).doings).toEqual([])
    const sent = await engines.command('changeOrder.send', { changeOrder: draft?.id }, project)
    expect(sent.status).toBe(200)
    const [sending, ...more] = (await since(version)).doings
    expect(sending).toMatchObject({ command: 'changeOrder.send', party: engineShop })
    expect(more).toEqual([])
  })

  it('is noticed as a gap, and fetched, with all that was missed in order', async () => {
    const socket = owner.socket()
    const changes = changesOf(socket)
    await following(socket, project)
    const held = projectStateOf(await whole())
    const before = textsIn(held)

    await write('first')
    await changes.until(held.record.version + 1)
    // The first message never arrives at the screen; the second shows that it was missed.
    await write('second')
    const second = await changes.until(held.record.version + 2)
    expect(meets({ version: held.record.version, epoch: held.epoch }, second)).toBe('gap')

    const missed = await since(held.record.version)
    expect(meets({ version: held.record.version, epoch: held.epoch }, missed)).toBe('follows')
    const wrote = { person: personOf.engines, party: engineShop, command: 'note.write' }
    expect(missed.doings).toMatchObject([wrote, wrote])
    expect(missed.people).toMatchObject({ [personOf.engines]: 'Person bexmanager' })
    const state = projectStateAfter(held, missed, at(0))
    expect(textsIn(state)).toEqual([...before, 'first', 'second'])
    expect(state.record.version).toBe(second.to)
    socket.close()
  })

  it('while the network was away is caught up with when the page is back', async () => {
    const held = projectStateOf(await whole())
    const before = textsIn(held)
    const socket = owner.socket()
    await following(socket, project)
    const gone = heard(socket, 'disconnect')
    socket.disconnect()
    await gone
    for (const text of ['one', 'two', 'three']) await write(text)

    const back = owner.socket()
    const version = await following(back, project)
    expect(version).toBe(held.record.version + 3)
    const state = projectStateAfter(held, await since(held.record.version), at(0))
    expect(textsIn(state)).toEqual([...before, 'one', 'two', 'three'])
    back.close()
  })

  it('costs a fetch and changes nothing that is known already', async () => {
    const view = await whole()
    expect(await since(view.version)).toMatchObject({
      from: view.version,
      to: view.version,
      entities: [],
    })
    expect(await since(2_000_000_000)).toMatchObject({ from: 0, to: view.version })
  })
})
