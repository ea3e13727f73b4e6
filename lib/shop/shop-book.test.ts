import { describe, expect, it } from 'vitest'
import { aContext, anId, at, engineShop, leadShop } from '../../test/builders.ts'
import { aBay, aMembership, aShop, aShopBook, aSlot } from '../../test/shop-builders.ts'
import type { Actor } from '../record/actor.ts'
import type { ShopCommand } from '../record/command.ts'
import { CommandKey, idsFrom } from '../record/ids.ts'
import { emptyShopRecord, type ShopRecord } from '../record/project-record.ts'
import { bayAdd } from './bay-add.ts'
import { bayDescribe } from './bay-describe.ts'
import { bayRetire } from './bay-retire.ts'
import { membershipAdd } from './membership-add.ts'
import { membershipChange } from './membership-change.ts'
import { membershipRemove } from './membership-remove.ts'
import { shopCreate } from './shop-create.ts'
import { shopDescribe } from './shop-describe.ts'

const manager: Actor = {
  person: anId('psn', 'maud'),
  role: 'manager',
  party: null,
  shop: leadShop,
  proof: 'password',
  provedAt: at(100),
}
const maud = aMembership({ person: manager.person })
const bay = aBay({ name: 'Booth', type: 'booth' })
const book = aShopBook(leadShop, aShop(), maud, bay)
const press = (command: ShopCommand, record: ShopRecord, input: object, actor = manager) =>
  command.apply(input, actor, record, aContext(actor))

describe('shop.create', () => {
  const newcomer = { ...manager, shop: null }
  const tarnLane = {
    name: 'Tarn Lane Coachworks',
    currency: 'GBP',
    timeZone: 'Europe/London',
    taxRegistered: true,
    taxRate: 2000,
  }
  const key = CommandKey.parse('01997000-0000-7000-8000-00000000beef')
  const id = idsFrom(key)('shp')
  const create = (record: ShopRecord, over: object = {}, actor: Actor = newcomer) => {
    const context = aContext(actor, { newId: idsFrom(key) })
    return shopCreate.apply({ ...tarnLane, ...over }, actor, record, context)
  }

  it('opens a book under the first id of its key, with who opened it as the first manager', () => {
    expect(create(emptyShopRecord(id))).toMatchObject({
      entities: [
        { kind: 'shop', id, ...tarnLane, opensAt: '08:00', closesAt: '18:00', demo: false },
        { kind: 'membership', shop: id, person: manager.person, role: 'manager' },
      ],
    })
  })

  it('refuses a second shop in one book, hours that end before they begin, and tax where it has none', () => {
    expect(create(book)).toMatchObject({ conditions: [{ rule: 'exists', entity: leadShop }] })
    expect(create(emptyShopRecord(id), { opensAt: '19:00' })).toMatchObject({
      conditions: [{ rule: 'input', field: 'closesAt' }],
    })
    expect(create(emptyShopRecord(id), { taxRegistered: false })).toMatchObject({
      conditions: [{ rule: 'input', field: 'taxRate' }],
    })
  })

  it('is not pressed from within a shop or a project', () => {
    expect(create(emptyShopRecord(id), {}, manager)).toEqual({ outcome: 'forbidden' })
    const inProject = { ...newcomer, party: engineShop }
    expect(create(emptyShopRecord(id), {}, inProject)).toEqual({ outcome: 'forbidden' })
  })
})

describe('shop.describe', () => {
  it('changes what is said and leaves the rest', () => {
    expect(press(shopDescribe, book, { closesAt: '17:30' })).toEqual({
      outcome: 'changes',
      entities: [aShop({ closesAt: '17:30' })],
    })
  })

  it("is for the shop's own managers", () => {
    const input = { name: 'Ours now' }
    expect(press(shopDescribe, book, input, { ...manager, role: 'hand' })).toEqual({
      outcome: 'forbidden',
    })
    expect(press(shopDescribe, book, input, { ...manager, shop: anId('shp', 'trim') })).toEqual({
      outcome: 'forbidden',
    })
  })
})

describe('bays', () => {
  it('are added, renamed and taken out of use', () => {
    expect(press(bayAdd, book, { name: 'Lift', type: 'lift' })).toMatchObject({
      entities: [{ kind: 'bay', shop: leadShop, name: 'Lift', type: 'lift', retiredAt: null }],
    })
    expect(press(bayDescribe, book, { bay: bay.id, name: 'Booth 1' })).toEqual({
      outcome: 'changes',
      entities: [{ ...bay, name: 'Booth 1' }],
    })
    expect(press(bayRetire, book, { bay: bay.id })).toEqual({
      outcome: 'changes',
      entities: [{ ...bay, retiredAt: at(100) }],
    })
  })

  it('have a name of their own', () => {
    const two = aShopBook(leadShop, aShop(), bay, aBay({ id: anId('bay', 'two'), name: 'Lift' }))
    const same = { conditions: [{ rule: 'exists', field: 'name' }] }
    expect(press(bayAdd, two, { name: 'lift', type: 'lift' })).toMatchObject(same)
    expect(press(bayDescribe, two, { bay: bay.id, name: 'LIFT' })).toMatchObject(same)
  })

  it('stay in use while an agreed slot in them is not over', () => {
    const slot = (from: number, to: number) =>
      aSlot({ bay: bay.id, from: at(from), to: at(to), party: engineShop })
    const over = aShopBook(leadShop, aShop(), bay, slot(10, 20), {
      ...slot(120, 140),
      state: 'asked',
    })
    expect(press(bayRetire, over, { bay: bay.id })).toMatchObject({ outcome: 'changes' })
    const later = slot(90, 110)
    const busy = aShopBook(leadShop, aShop(), bay, later)
    expect(press(bayRetire, busy, { bay: bay.id })).toMatchObject({
      outcome: 'refusal',
      conditions: [
        {
          rule: 'slot-taken',
          entity: later.id,
          to: at(110),
          by: engineShop,
          clearedWith: { command: 'slot.release', input: { slot: later.id } },
        },
      ],
    })
  })

  it('are not retired or renamed twice', () => {
    const retired = aShopBook(leadShop, aShop(), { ...bay, retiredAt: at(1) })
    const gone = { conditions: [{ rule: 'state', is: 'retired' }] }
    expect(press(bayRetire, retired, { bay: bay.id })).toMatchObject(gone)
    expect(press(bayDescribe, retired, { bay: bay.id, name: 'x' })).toMatchObject(gone)
  })
})

describe('people of a shop', () => {
  const jory = aMembership({ person: anId('psn', 'jory'), role: 'hand' })
  const both = aShopBook(leadShop, aShop(), maud, jory)

  it('are taken in once, and again after they left', () => {
    const input = { person: jory.person, role: 'hand' }
    expect(press(membershipAdd, book, input)).toMatchObject({
      entities: [{ kind: 'membership', shop: leadShop, person: jory.person, role: 'hand' }],
    })
    expect(press(membershipAdd, both, input)).toMatchObject({
      conditions: [
        {
          rule: 'exists',
          field: 'person',
          clearedWith: { command: 'membership.change', input: { membership: jory.id } },
        },
      ],
    })
    const left = aShopBook(leadShop, aShop(), maud, { ...jory, removedAt: at(9) })
    expect(press(membershipAdd, left, input)).toMatchObject({ outcome: 'changes' })
  })

  it('change their role and leave', () => {
    expect(press(membershipChange, both, { membership: jory.id, role: 'manager' })).toEqual({
      outcome: 'changes',
      entities: [{ ...jory, role: 'manager' }],
    })
    expect(press(membershipRemove, both, { membership: jory.id })).toEqual({
      outcome: 'changes',
      entities: [{ ...jory, removedAt: at(100) }],
    })
  })

  it('never leave the shop without a manager', () => {
    const alone = {
      outcome: 'refusal',
      conditions: [
        {
          rule: 'not-alone',
          person: manager.person,
          clearedWith: { command: 'membership.add', input: { role: 'manager' } },
        },
      ],
    }
    expect(press(membershipRemove, both, { membership: maud.id })).toMatchObject(alone)
    expect(press(membershipChange, both, { membership: maud.id, role: 'hand' })).toMatchObject(
      alone,
    )
    const two = aShopBook(leadShop, aShop(), maud, { ...jory, role: 'manager' })
    expect(press(membershipRemove, two, { membership: maud.id })).toMatchObject({
      outcome: 'changes',
    })
    const former = aShopBook(leadShop, aShop(), maud, {
      ...jory,
      role: 'manager',
      removedAt: at(9),
    })
    expect(press(membershipRemove, former, { membership: maud.id })).toMatchObject(alone)
  })

  it("are the managers' to name", () => {
    const hand: Actor = { ...manager, role: 'hand', person: jory.person }
    const raise = { membership: jory.id, role: 'manager' }
    expect(press(membershipChange, both, raise, hand)).toEqual({ outcome: 'forbidden' })
  })
})
