import { describe, expect, it } from 'vitest'
import { projectCommands } from '../lib/command/registry.ts'
import { shopCommands } from '../lib/command/set-up-commands.ts'
import type { Actor, Role } from '../lib/record/actor.ts'
import type { Applied } from '../lib/record/command.ts'
import { idsFrom } from '../lib/record/ids.ts'
import {
  aContext,
  aKey,
  anActor,
  anId,
  engineShop,
  lead,
  leadShop,
  owner,
  trimShop,
} from './builders.ts'
import { type Column, columns, mayPress, mayPressWhere } from './model/access.ts'
import {
  book,
  books,
  engines,
  glass,
  hand,
  type Input,
  inputs,
  inputsWhere,
  insurer,
  record,
  trim,
} from './model/access-samples.ts'

const someone = (role: Role, party: Actor['party'], shop: Actor['shop'] = null): Actor => ({
  ...anActor(owner),
  person: anId('psn', `${role}${party?.slice(4) ?? 'nobody'}`),
  role,
  party,
  shop,
})

const cast: { readonly [C in Column]: Actor } = {
  'manager of the lead': someone('manager', lead, leadShop),
  'hand of the lead': someone('hand', lead, leadShop),
  'own manager': someone('manager', engineShop, engines),
  'own hand': { ...someone('hand', engineShop, engines), person: hand },
  'other manager': someone('manager', trimShop, trim),
  'other hand': someone('hand', trimShop, trim),
  owner: someone('owner', owner),
  supplier: someone('supplier', glass),
  observer: someone('observer', insurer),
  'guest by a link': someone('guest', engineShop),
  'somebody outside': someone('manager', null),
}

/** In a shop book, and before there is a project, nobody acts for a party. */
const ofABook = (name: string): boolean => name in shopCommands || name === 'project.create'

function press(name: string, input: Input, column: Column): Applied {
  const actor = ofABook(name) ? { ...cast[column], party: null } : cast[column]
  const ctx = {
    ...aContext(actor),
    newId: idsFrom(aKey()),
    shops: new Map(books.map((one) => [one.id, one])),
  }
  const onShop = new Map(Object.entries(shopCommands)).get(name)
  if (onShop !== undefined) return onShop.apply(input, actor, book, ctx)
  const onProject = new Map(Object.entries(projectCommands)).get(name)
  if (onProject === undefined) throw new Error(`There is no ${name}.`)
  return onProject.apply(input, actor, record, ctx)
}

const nameIn = (row: string): string => row.split(',')[0] ?? ''
const rows: [string, string, Input][] = [
  ...Object.entries(mayPress).map(([row, cells]): [string, string, Input] => [
    row,
    cells,
    new Map(Object.entries(inputs)).get(row) ?? {},
  ]),
  ...Object.entries(mayPressWhere).map(([row, cells]): [string, string, Input] => [
    row,
    cells,
    new Map(Object.entries(inputsWhere)).get(row) ?? {},
  ]),
]

describe('who may press what', () => {
  it('is said of every command, for everyone', () => {
    const known = [...Object.keys(projectCommands), ...Object.keys(shopCommands)]
    expect(Object.keys(mayPress).sort()).toEqual(known.sort())
    for (const [row, cells] of rows)
      expect([row, cells.trim().split(/\s+/).length]).toEqual([row, columns.length])
  })

  it.each(rows)('%s', (row, cells, input) => {
    const outcomes = columns.map((column) => press(nameIn(row), input, column).outcome)
    const may = outcomes.map((outcome) => (outcome === 'forbidden' ? '.' : 'y'))
    const table = (marks: readonly string[]) =>
      Object.fromEntries(columns.map((column, i) => [column, marks[i]]))
    expect(table(may)).toEqual(table(cells.trim().split(/\s+/)))
    expect(outcomes).not.toContain('invalid')
  })
})
