import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { freshKey } from '../lib/server/fresh-key.ts'
import type { AnyMove } from '../lib/server/lane/outcome.ts'
import { listenToOtherNodes } from '../lib/server/live/other-nodes.ts'
import { type Commands, openCommands } from '../lib/server/run-command.ts'
import { aDatabase, type TestDatabase } from './a-database.ts'
import { anId, aParty, aProject, aShell } from './builders.ts'
import { aPool, aShopWithBay, done, journalAgainstTables, plant, signedInAs } from './plant.ts'

const host = aShopWithBay('host')
const project = anId('prj', 'shared')
const lead = anId('pty', 'shared')

let database: TestDatabase
let pools: [pg.Pool, pg.Pool]
let here: Commands
let there: Commands

beforeAll(async () => {
  database = await aDatabase()
  pools = [aPool(database.url), aPool(database.url)]
  await plant(pools[0], host.entities)
  await plant(pools[0], [
    aProject({ id: project }),
    aParty({ id: lead, project, lead: true, shop: host.shop }),
    aShell({ project, custodian: lead }),
  ])
  here = openCommands(pools[0])
  there = openCommands(pools[1])
})
afterAll(async () => {
  for (const pool of pools) await pool.end()
  await database.drop()
})

const request = (name: string, key = freshKey()) => ({
  name: 'assembly.add',
  input: { name, pieces: 1, custodian: lead },
  key,
  happenedAt: new Date().toISOString(),
  expected: { [project]: 1 },
})
const add = async (node: Commands, name: string) =>
  done(await node.run(signedInAs(host.person), request(name)))

async function until<T>(what: () => T | undefined): Promise<T> {
  for (let tries = 0; tries < 200; tries++) {
    const found = what()
    if (found !== undefined) return found
    await new Promise((resolve) => setTimeout(resolve, 25))
  }
  throw new Error('It did not happen within five seconds.')
}

describe('two nodes on one database', () => {
  it('decide again on what the other one saved, when they were too late', async () => {
    await add(here, 'One')
    await add(there, 'Two')
    const heard: AnyMove[] = []
    const stop = here.onCommit((move) => heard.push(move))
    const late = await add(here, 'Three')
    stop()
    expect(late.moves[0]?.move.from).toBe(3)
    // Those who follow here hear of the other's change first, then of ours, without a gap.
    expect(heard.map(({ move }) => [move.from, move.to])).toEqual([
      [2, 3],
      [3, 4],
    ])
    expect(heard[0]?.move.doings).toMatchObject([
      { doing: { person: host.person, command: 'assembly.add' } },
    ])
  })

  it('refuse on the newest record only', async () => {
    const name = 'Four'
    const made = (await add(there, name)).moves[0]?.move.entities[0]
    const fit = {
      ...request(''),
      name: 'assembly.fit',
      input: { assembly: made?.id, host: aShell().id, reason: 'By hand' },
    }
    // This node doesn't know the assembly yet.
    expect(here.records.peek(project)?.record.versions.has(made?.id ?? '')).toBe(false)
    expect((await here.run(signedInAs(host.person), fit)).is).toBe('done')
  })

  it('give the same answer to a key that the other one carried out', async () => {
    const sent = request('Five')
    const first = done(await here.run(signedInAs(host.person), sent))
    const second = done(await there.run(signedInAs(host.person), sent))
    expect(second.again).toBe(true)
    expect(second.moves[0]?.move.entities).toEqual(first.moves[0]?.move.entities)
    const other = { ...sent, input: { ...sent.input, name: 'Another' } }
    expect(await there.run(signedInAs(host.person), other)).toEqual({ is: 'key reused' })
  })

  it('both get on while each keeps getting in before the other', async () => {
    const names = Array.from({ length: 40 }, (_, n) => `Racing ${n}`)
    await Promise.all(names.map((name, n) => add(n % 2 === 0 ? here : there, name)))
    const { verified, tables, replayed, entries } = await journalAgainstTables(pools[0], project)
    expect(verified).toMatchObject({ holds: true })
    expect(replayed).toBe(tables)
    expect(entries.filter(({ parts }) => JSON.stringify(parts).includes('Racing'))).toHaveLength(40)
  })

  it('get on with other projects while one is held elsewhere', async () => {
    const other = anId('prj', 'apart')
    const shell = anId('asm', 'apart')
    const party = anId('pty', 'apart')
    await plant(pools[0], [
      aProject({ id: other }),
      aParty({ id: party, project: other, lead: true, shop: host.shop }),
      aShell({ id: shell, project: other, custodian: party }),
    ])
    const holder = await pools[1].connect()
    await holder.query('select pg_advisory_lock(hashtextextended($1, 0))', [project])
    let held = true
    const waits = add(here, 'Waits for the lock').finally(() => {
      held = false
    })
    const input = { assembly: shell, name: 'Shell on the rack', pieces: 1 }
    const press = { ...request(''), name: 'assembly.describe', input, expected: { [other]: 1 } }
    done(await here.run(signedInAs(host.person), press))
    expect(held).toBe(true)
    await holder.query('select pg_advisory_unlock_all()')
    holder.release()
    await waits
  })

  it('follow each other by notices, and find what was said while the line was cut', async () => {
    const ear = await listenToOtherNodes(database.url, pools[1], there)
    const heard: AnyMove[] = []
    const stop = there.onCommit((move) => heard.push(move))
    await there.catchUp(project)
    heard.length = 0
    const first = await add(here, 'Told by a notice')
    await until(() => heard.find(({ move }) => move.to === first.moves[0]?.move.to))
    expect(heard[0]?.move.entities).toMatchObject([{ name: 'Told by a notice' }])

    await pools[0].query(
      `select pg_terminate_backend(pid) from pg_stat_activity
        where datname = current_database() and query like 'listen %'`,
    )
    const second = await add(here, 'Said to nobody')
    await until(() => heard.find(({ move }) => move.to === second.moves[0]?.move.to))
    const third = await add(here, 'Told again')
    await until(() => heard.find(({ move }) => move.to === third.moves[0]?.move.to))
    stop()
    await ear.close()
  })

  it('tell whether a command was carried out after the connection broke', async () => {
    const cut = aPool(database.url, 4)
    const node = openCommands(cut)
    await node.run(signedInAs(host.person), request('Warm'))
    const names = Array.from({ length: 60 }, (_, n) => `Cut ${n}`)
    const running = names.map(async (name, n) => {
      await new Promise((resolve) => setTimeout(resolve, n * 3))
      return done(await node.run(signedInAs(host.person), request(name)))
    })
    for (let cuts = 0; cuts < 5; cuts++) {
      await new Promise((resolve) => setTimeout(resolve, 30))
      await pools[0].query(
        `select pg_terminate_backend(pid) from pg_stat_activity
          where datname = current_database() and query like '%commit_record%' and pid <> pg_backend_pid()`,
      )
    }
    await Promise.all(running)
    await cut.end()
    const { rows } = await pools[0].query<{ name: string }>(
      `select "name" from "Assembly" where "project" = $1 and "name" like 'Cut %'`,
      [project],
    )
    expect(rows.map(({ name }) => name).sort()).toEqual(names.sort())
    const { verified, tables, replayed } = await journalAgainstTables(pools[0], project)
    expect(verified).toMatchObject({ holds: true })
    expect(replayed).toBe(tables)
  })
})
