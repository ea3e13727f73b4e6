import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import pg from 'pg'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import * as z from 'zod/mini'
import { verifyJournal } from '../lib/journal/verify.ts'
import { erasePersonal } from '../lib/journal/withhold.ts'
import type { Entity, Kind } from '../lib/record/entity.ts'
import { entitySchemas } from '../lib/record/entity.ts'
import { CivilDate, Instant, Minor, Sha256 } from '../lib/record/scalars.ts'
import { KEPT_COLUMNS, tableOf } from '../lib/server/database/tables.ts'
import { openDraft } from '../lib/server/lane/draft.ts'
import { loadRecord, readEntries } from '../lib/server/load.ts'
import { commit, saveOf } from '../lib/server/save.ts'
import { aDatabase, type TestDatabase } from './a-database.ts'
import {
  aChangeLine,
  aChangeOrder,
  anEngine,
  anId,
  aPart,
  aProject,
  aShell,
  aStage,
  at,
  engineShop,
  leadShop,
  project,
  theParties,
} from './builders.ts'
import { aPool, journalAgainstTables, plant } from './plant.ts'
import { furtherParties, samples } from './see-samples.ts'
import { aBay, aShop } from './shop-builders.ts'

let database: TestDatabase
let pool: pg.Pool
const hash = Sha256.parse('ab'.repeat(32))

beforeAll(async () => {
  database = await aDatabase()
  pool = aPool(database.url)
  await plant(pool, everything)
})
afterAll(async () => {
  await pool.end()
  await database.drop()
})

/** A project and a shop book with every kind of entity. */
const everything = ofEveryKind()
function ofEveryKind(): Entity[] {
  const { shop, bay, slot, membership, project: car, ...rest } = samples
  const others = Object.values(rest).map((entity) =>
    entity.kind === 'changeOrder' ? { ...entity, shownHash: hash } : entity,
  )
  const known = [car, shop, membership, slot].flatMap((entity) => (entity ? [entity] : []))
  return [
    ...known,
    aBay({ id: anId('bay', 'one') }),
    ...(bay ? [bay] : []),
    ...theParties(),
    ...furtherParties,
    aShop({ id: anId('shp', 'engines') }),
    aShop({ id: anId('shp', 'trim') }),
    aShell(),
    anEngine(),
    aStage({ id: anId('stg', 'run') }),
    ...others,
  ]
}

const kinds = Object.keys(entitySchemas).filter((name): name is Kind => name in entitySchemas)

/** The column that holds a field. */
function columnFor(field: z.ZodMiniType): string {
  const nullable = field instanceof z.ZodMiniNullable
  const inner = nullable ? field.def.innerType : field
  return `${typeFor(inner)}${nullable ? '' : ' not null'}`
}
function typeFor(inner: unknown): string {
  if (inner === Instant) return 'timestamp(3) with time zone'
  if (inner === CivilDate) return 'date'
  if (inner === Minor) return 'bigint'
  if (inner instanceof z.ZodMiniArray) return `${typeFor(inner.def.element)}[]`
  if (inner instanceof z.ZodMiniBoolean) return 'boolean'
  if (inner instanceof z.ZodMiniNumberFormat) return 'integer'
  if (inner instanceof z.ZodMiniNumber) return 'double precision'
  return 'text'
}

/** The column that a field of schema.prisma stands for. */
function columnOf(type: string, attributes: string): string {
  if (attributes.includes('@db.Timestamptz(3)')) return 'timestamp(3) with time zone'
  if (attributes.includes('@db.Date')) return 'date'
  if (attributes.includes('@db.Citext')) return 'citext'
  const plain: { readonly [type: string]: string } = {
    String: 'text',
    'String[]': 'text[]',
    'Float[]': 'double precision[]',
    Int: 'integer',
    BigInt: 'bigint',
    Float: 'double precision',
    Boolean: 'boolean',
    Json: 'jsonb',
  }
  return plain[type] ?? type
}

/** What the database says to one statement. */
async function refusalOf(sql: string, values: unknown[] = []): Promise<string | undefined> {
  try {
    await pool.query(sql, values)
    return undefined
  } catch (error) {
    return error instanceof pg.DatabaseError ? error.code : String(error)
  }
}

describe('the tables', () => {
  it('have a column for each field of each entity, of its type, and none besides', async () => {
    const { rows } = await pool.query<{ table: string; name: string; type: string }>(
      `select c.relname as table, a.attname as name,
              format_type(a.atttypid, a.atttypmod) || case when a.attnotnull then ' not null' else '' end as type
         from pg_attribute a join pg_class c on c.oid = a.attrelid
        where c.relnamespace = 'public'::regnamespace and c.relkind = 'r' and a.attnum > 0 and not a.attisdropped`,
    )
    for (const kind of kinds) {
      const fields = Object.entries(entitySchemas[kind].shape)
        .filter(([name]) => name !== 'kind')
        .map(([name, field]) => [name, columnFor(field)])
      const columns = rows
        .filter(({ table, name }) => table === tableOf[kind] && !KEPT_COLUMNS.includes(name))
        .map(({ name, type }) => [name, type])
      expect(Object.fromEntries(columns), kind).toEqual(Object.fromEntries(fields))
    }
  })

  it('are those of schema.prisma, column by column', async () => {
    const { rows } = await pool.query<{ table: string; name: string; type: string }>(
      `select c.relname as table, a.attname as name,
              format_type(a.atttypid, a.atttypmod) || case when a.attnotnull then '' else '?' end as type
         from pg_attribute a join pg_class c on c.oid = a.attrelid
        where c.relnamespace = 'public'::regnamespace and c.relkind = 'r' and a.attnum > 0
          and not a.attisdropped and c.relname <> '_prisma_migrations'`,
    )
    const columns = rows.map(({ table, name, type }) => `${table}.${name} ${type}`)
    const schema = readFileSync('prisma/schema.prisma', 'utf8')
    const models = [...schema.matchAll(/^model (\w+) \{\n([^}]*)\}/gm)]
    const fields = models.flatMap(([, model = '', body = '']) =>
      [...body.matchAll(/^ {2}(\w+) +(\w+(?:\[\])?)(\??)(.*)$/gm)].map(
        ([, name, type = '', optional, attributes = '']) =>
          `${model}.${name} ${columnOf(type, attributes)}${optional}`,
      ),
    )
    expect(fields.sort()).toEqual(columns.sort())
  })

  it('allow the words that an entity allows, and no others', async () => {
    const { rows } = await pool.query<{ table: string; said: string }>(
      `select conrelid::regclass::text as table, pg_get_constraintdef(oid) as said
         from pg_constraint where contype = 'c'`,
    )
    for (const kind of kinds) {
      for (const [name, field] of Object.entries(entitySchemas[kind].shape)) {
        const inner = field instanceof z.ZodMiniNullable ? field.def.innerType : field
        if (!(inner instanceof z.ZodMiniEnum)) continue
        const words = rows
          .filter(({ table }) => table.replaceAll('"', '') === tableOf[kind])
          .filter(({ said }) => new RegExp(`\\(\\(?"?${name}"? = ANY`).test(said))
          .flatMap(({ said }) => [...said.matchAll(/'([^']*)'::text/g)].map(([, word]) => word))
        expect(words.sort(), `${kind}.${name}`).toEqual(Object.values(inner.def.entries).sort())
      }
    }
  })

  it('give back every kind of entity as it was, and the journal replays to them', async () => {
    const loaded = await loadRecord(pool, project)
    const found = new Map<string, unknown>()
    for (const value of Object.values(loaded?.record ?? {})) {
      if (typeof value !== 'object' || value === null || !('rows' in value)) continue
      if (value.rows instanceof Map) for (const [id, row] of value.rows) found.set(String(id), row)
    }
    const mine = everything.filter((one) => 'project' in one || one.kind === 'project')
    expect(new Set(mine.map(({ kind }) => kind)).size).toBe(kinds.length - 3)
    for (const entity of mine) expect(found.get(entity.id)).toEqual(entity)
    for (const id of [project, leadShop]) {
      const { tables, replayed } = await journalAgainstTables(pool, id)
      expect(replayed).toBe(tables)
    }
  })

  it('keep every figure and every letter to the last', async () => {
    const odd = fc.record({
      price: fc.maxSafeInteger(),
      hours: fc.double({ min: 0, max: 100_000, noNaN: true }),
      text: fc.string({ unit: 'binary' }).filter((t) => !t.includes('\0') && t.isWellFormed()),
      ms: fc.integer({ min: -60_000_000_000_000, max: 200_000_000_000_000 }),
    })
    let made = 0
    await fc.assert(
      fc.asyncProperty(odd, async ({ price, hours, text, ms }) => {
        const car = anId('prj', `odd${made++}`)
        const party = anId('pty', `odd${made}`)
        const moment = Instant.parse(new Date(ms).toISOString())
        const entities: Entity[] = [
          aProject({ id: car, description: text, createdAt: moment }),
          { ...(theParties()[0] ?? never()), id: party, project: car },
          aPart({ project: car, party, price: Minor.parse(price), remark: text }),
          aStage({ project: car, party, assemblies: [], hoursLikely: hours, number: 1 }),
        ]
        await plant(pool, entities)
        const { tables, replayed } = await journalAgainstTables(pool, car)
        expect(replayed).toBe(tables)
        const stored = (await loadRecord(pool, car))?.record
        expect(stored && 'parts' in stored && [...stored.parts.rows.values()]).toEqual([
          entities[2],
        ])
      }),
      { numRuns: 60 },
    )
  })
})

const never = (): never => {
  throw new Error('There is no party.')
}

describe('the database itself', () => {
  const copyStage = (over: string, values: unknown[] = []) =>
    refusalOf(
      `insert into "Stage" select (jsonb_populate_record(s, ${over})).* from "Stage" s where "id" = 'stg_run'`,
      values,
    )

  it('refuses a second lead, a number twice, a span that ends before it begins', async () => {
    expect(await refusalOf(`update "Party" set "lead" = true where "id" = $1`, [engineShop])).toBe(
      '23505',
    )
    expect(await copyStage(`'{"id": "stg_again"}'`)).toBe('23505')
    expect(await refusalOf(`update "Slot" set "to" = "from"`)).toBe('23514')
    expect(await refusalOf(`update "Stage" set "state" = 'finished'`)).toBe('23514')
    expect(await refusalOf(`update "Part" set "price" = 9007199254740992`)).toBe('23514')
    expect(await refusalOf(`update "Stage" set "hoursMost" = -1`)).toBe('23514')
  })

  it("refuses to hang anything on what isn't there, or is another car's", async () => {
    await plant(pool, [
      aProject({ id: anId('prj', 'other') }),
      { ...(theParties()[0] ?? never()), id: anId('pty', 'other'), project: anId('prj', 'other') },
      aShell({
        id: anId('asm', 'other'),
        project: anId('prj', 'other'),
        custodian: anId('pty', 'other'),
      }),
    ])
    const stage = (over: object) =>
      copyStage('$1::jsonb', [JSON.stringify({ id: 'stg_x', number: 900_001, ...over })])
    expect(await stage({ party: 'pty_other' })).toBe('23503')
    expect(await stage({ changeOrder: 'cho_gone' })).toBe('23503')
    expect(await stage({ assemblies: ['asm_engine', 'asm_other'] })).toBe('23503')
    expect(await stage({ countersigns: ['pty_gone'] })).toBe('23503')
    expect(await stage({})).toBeUndefined()
    const later = `update "Stage" set "fits" = '{asm_engine, asm_other}' where "id" = 'stg_x'`
    expect(await refusalOf(later)).toBe('23503')
  })

  it('refuses two agreed slots that overlap in a bay or for an assembly, and no others', async () => {
    const slot = (over: object) =>
      refusalOf(
        `insert into "Slot" select (jsonb_populate_record(s, $1::jsonb)).* from "Slot" s where "id" = $2`,
        [JSON.stringify(over), samples.slot?.id],
      )
    expect(await slot({ id: 'slt_a', assembly: 'asm_engine' })).toBe('23P01')
    await pool.query(
      `insert into "Bay" select (jsonb_populate_record(b, '{"id": "bay_two"}')).* from "Bay" b where "id" = 'bay_one'`,
    )
    expect(await slot({ id: 'slt_b', bay: 'bay_two' })).toBe('23P01')
    expect(await slot({ id: 'slt_c', state: 'asked' })).toBeUndefined()
    expect(await slot({ id: 'slt_d', from: at(48), to: at(50) })).toBeUndefined()
    expect(await slot({ id: 'slt_e', assembly: 'asm_engine', bay: 'bay_two' })).toBeUndefined()
  })

  it('never lets an approved change order change, nor its lines', async () => {
    const order = aChangeOrder({ id: anId('cho', 'agreed'), number: 77, state: 'approved' })
    const line = aChangeLine({ changeOrder: order.id })
    const car = { ...aProject({ id: anId('prj', 'agreed') }) }
    const party = { ...(theParties()[0] ?? never()), id: anId('pty', 'agreed'), project: car.id }
    await plant(pool, [
      car,
      party,
      { ...line, project: car.id, party: party.id },
      { ...order, project: car.id, party: party.id },
    ])
    expect(
      await refusalOf(`update "ChangeOrder" set "title" = 'More' where "id" = $1`, [order.id]),
    ).toBe('FY010')
    expect(await refusalOf(`delete from "ChangeOrder" where "id" = $1`, [order.id])).toBe('FY010')
    expect(await refusalOf(`update "ChangeLine" set "net" = 1 where "id" = $1`, [line.id])).toBe(
      'FY010',
    )
    const another = `insert into "ChangeLine" select (jsonb_populate_record(l, '{"id": "chl_more"}')).* from "ChangeLine" l where "id" = $1`
    expect(await refusalOf(another, [line.id])).toBe('FY010')
    expect(
      await refusalOf(`update "ChangeOrder" set "title" = 'More' where "id" = 'cho_liners'`),
    ).toBeUndefined()
  })

  it('never rewrites the journal, but lets a name be erased', async () => {
    expect(await refusalOf(`update "JournalEntry" set "person" = 'psn_else'`)).toBe('FY011')
    expect(await refusalOf(`delete from "JournalEntry"`)).toBe('FY011')
    expect(await refusalOf(`truncate "JournalEntry"`)).toBe('FY011')
    const rewritten = `update "JournalEntry" set "parts" = jsonb_set("parts", '{0,value}', '{"entities": []}')`
    expect(await refusalOf(rewritten)).toBe('FY011')
    const entry = (await readEntries(pool, project))[0] ?? never()
    expect(entry.parts.map(({ scope }) => scope)).toContain('personal')
    const keep = (parts: unknown) =>
      refusalOf(`update "JournalEntry" set "parts" = $2 where "record" = $1 and "sequence" = 1`, [
        project,
        JSON.stringify(parts),
      ])
    expect(await keep(entry.parts.map(({ scope, hash }) => ({ scope, hash })))).toBe('FY011')
    expect(await keep(entry.parts.slice(1))).toBe('FY011')
    expect(await keep(erasePersonal(entry).parts)).toBeUndefined()
    const entries = await readEntries(pool, project)
    expect(verifyJournal(entries)).toMatchObject({ holds: true, missingParts: 1 })
    expect(JSON.stringify(entries)).not.toContain('A. Carter')
  })

  it('writes all of a save or nothing', async () => {
    const loaded = (await loadRecord(pool, project)) ?? never()
    const save = saveOf(openDraft([loaded]))
    const to = loaded.record.version + 1
    const records = [{ id: project, from: loaded.record.version, to }]
    const row = { ...anEngine({ id: anId('asm', 'half') }), version: to, made: to }
    const stranger = { ...row, id: 'asm_strange', custodian: 'pty_gone' }
    const write = (over: object) =>
      commit(pool, 'test', { ...save, records, ...over }).then(
        () => 'written',
        (error: unknown) => (error instanceof pg.DatabaseError ? error.code : String(error)),
      )
    expect(await write({ inserts: { Assembly: [row, stranger] } })).toBe('23503')
    expect(await write({ updates: { Assembly: [row] } })).toBe('FY003')
    expect(await write({ updates: { Assembly: [{ ...row, id: 'asm_other' }] } })).toBe('FY003')
    expect(await write({ inserts: { Assembly: [{ ...row, id: 'asm_shell' }] } })).toBe('23505')
    const late = [{ id: project, from: to + 5, to: to + 6 }]
    expect(await write({ records: late, inserts: { Assembly: [row] } })).toBe('FY001')
    const shop = (await loadRecord(pool, leadShop))?.record.version ?? 0
    const reading = (version: number) => [...records, { id: leadShop, from: version, to: version }]
    const inserts = { Assembly: [row] }
    expect(await write({ records: reading(shop + 1), inserts })).toBe('FY001')
    expect((await loadRecord(pool, project))?.record).toEqual(loaded.record)
    expect(await write({ records: reading(shop), updates: { Assembly: [row] } })).toBe('FY003')
    expect(await write({ records: reading(shop), inserts })).toBe('written')
  })

  it('keeps no two accounts with one address, whatever its case', async () => {
    const add = (id: string, email: string) =>
      refusalOf(`insert into "Person" ("id", "name", "email") values ($1, 'Ines', $2)`, [id, email])
    expect(await add('psn_case1', 'Ines@Yard.example')).toBeUndefined()
    expect(await add('psn_case2', 'ines@yard.EXAMPLE')).toBe('23505')
  })
})
