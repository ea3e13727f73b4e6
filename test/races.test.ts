import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { RecordId } from '../lib/journal/journal-entry.ts'
import type { PersonId, ProjectId } from '../lib/record/ids.ts'
import { freshKey } from '../lib/server/fresh-key.ts'
import { listenToOtherNodes, type OtherNodes } from '../lib/server/live/other-nodes.ts'
import { type Commands, openCommands } from '../lib/server/run-command.ts'
import { aDatabase, type TestDatabase } from './a-database.ts'
import { anId } from './builders.ts'
import { aPool, done, journalAgainstTables, signedInAs } from './plant.ts'
import { busy, cars, contested, host, plantGround, rivals, span } from './race-ground.ts'

const CLIENTS = 20
const PRESSES = 10

describe.each([1, 2])('with %i app nodes on one database', (count) => {
  let database: TestDatabase
  const nodes: Commands[] = []
  const pools: pg.Pool[] = []
  const ears: OtherNodes[] = []

  beforeAll(async () => {
    database = await aDatabase()
    const first = aPool(database.url)
    await plantGround(first)
    pools.push(first, ...Array.from({ length: count - 1 }, () => aPool(database.url)))
    for (const pool of pools) {
      const commands = openCommands(pool)
      nodes.push(commands)
      ears.push(await listenToOtherNodes(database.url, pool, commands))
    }
  })
  afterAll(async () => {
    await Promise.all(ears.map((ear) => ear.close()))
    await Promise.all(pools.map((pool) => pool.end()))
    await database.drop()
  })

  /** The n-th press goes to the nodes by turns. */
  const press = (n: number, person: PersonId, project: ProjectId, name: string, input: object) => {
    const node = nodes[n % nodes.length]
    if (node === undefined) throw new Error('There is no node.')
    const request = {
      name,
      input,
      key: freshKey(),
      happenedAt: new Date().toISOString(),
      expected: { [project]: 1 },
    }
    return { request, outcome: node.run(signedInAs(person), request), node }
  }
  const holdsByteForByte = async (id: RecordId) => {
    const pool = pools[0]
    if (pool === undefined) throw new Error('There is no database.')
    const { verified, tables, replayed, entries } = await journalAgainstTables(pool, id)
    expect(verified).toMatchObject({ holds: true, missingParts: 0 })
    expect(replayed).toBe(tables)
    return entries
  }
  const agreedSlots = async (where: string, id: string) => {
    const found = await pools[0]?.query(
      `select "id" from "Slot" where "${where}" = $1 and "state" = 'agreed'`,
      [id],
    )
    return found?.rowCount
  }

  it('lets one of fifty shops have the shell, each claiming it for its own bay', async () => {
    const outcomes = await Promise.all(
      rivals.map(({ shop, bay, person }, n) => {
        const input = { assembly: anId('asm', 'contested'), bay, shop, ...span }
        return press(n, person, contested, 'slot.claim', input).outcome
      }),
    )
    expect(outcomes.filter(({ is }) => is === 'done')).toHaveLength(1)
    for (const outcome of outcomes) {
      if (outcome.is === 'done') continue
      expect(outcome).toMatchObject({
        is: 'refused',
        conditions: [{ rule: 'slot-taken', what: 'assembly', ...span }],
      })
    }
    expect(await agreedSlots('assembly', anId('asm', 'contested'))).toBe(1)
    await holdsByteForByte(contested)
    for (const { shop } of rivals) await holdsByteForByte(shop)
  })

  it('lets one of fifty cars have the one bay', async () => {
    const outcomes = await Promise.all(
      cars.map((car, n) => {
        const input = { assembly: anId('asm', car), bay: host.bay, shop: host.shop, ...span }
        return press(n, host.person, anId('prj', car), 'slot.claim', input).outcome
      }),
    )
    expect(outcomes.filter(({ is }) => is === 'done')).toHaveLength(1)
    for (const outcome of outcomes) {
      if (outcome.is === 'done') continue
      expect(outcome).toMatchObject({
        is: 'refused',
        conditions: [{ rule: 'slot-taken', what: 'bay', bay: host.bay }],
      })
    }
    expect(await agreedSlots('bay', host.bay)).toBe(1)
    await holdsByteForByte(host.shop)
    for (const car of cars) await holdsByteForByte(anId('prj', car))
  })

  it('loses none of 200 commands of twenty clients, and doubles none', async () => {
    const client = async (n: number) => {
      const names: string[] = []
      for (let press_ = 0; press_ < PRESSES; press_++) {
        const name = `Piece ${n}.${press_}`
        const input = { name, pieces: 1, custodian: anId('pty', 'busy') }
        done(await press(n + press_, host.person, busy, 'assembly.add', input).outcome)
        names.push(name)
      }
      return names
    }
    const names = (await Promise.all(Array.from({ length: CLIENTS }, (_, n) => client(n)))).flat()
    const found = await pools[0]?.query<{ name: string }>(
      `select "name" from "Assembly" where "project" = $1 and "name" like 'Piece %'`,
      [busy],
    )
    expect(found?.rows.map(({ name }) => name).sort()).toEqual(names.sort())
    const entries = await holdsByteForByte(busy)
    expect(entries).toHaveLength(CLIENTS * PRESSES + 1)
    expect(entries.map(({ sequence }) => sequence)).toEqual(entries.map((_, n) => n + 1))
  })

  it('carries out a key once that is sent ten times, and gives ten times the same answer', async () => {
    const input = { name: 'Only once', pieces: 1, custodian: anId('pty', 'busy') }
    const { request, outcome, node } = press(0, host.person, busy, 'assembly.add', input)
    const others = Array.from({ length: 9 }, (_, n) =>
      (nodes[(n + 1) % nodes.length] ?? node).run(signedInAs(host.person), request),
    )
    const outcomes = (await Promise.all([outcome, ...others])).map(done)
    const [first] = outcomes
    for (const { moves } of outcomes) {
      const [mine] = moves
      const [theirs] = first?.moves ?? []
      expect(mine?.move.entities).toEqual(theirs?.move.entities)
      expect([mine?.move.from, mine?.move.to]).toEqual([theirs?.move.from, theirs?.move.to])
    }
    expect(outcomes.filter(({ again }) => !again)).toHaveLength(1)
    const entries = await holdsByteForByte(busy)
    expect(entries.filter(({ key }) => key === request.key)).toHaveLength(1)
  })
})
