import type { Bay, Membership, Shop } from '../lib/record/entities/people.ts'
import type { OpenWindow, Slot } from '../lib/record/entities/things.ts'
import type { Entity } from '../lib/record/entity.ts'
import type { ShopId } from '../lib/record/ids.ts'
import { emptyShopRecord, type ShopRecord, shopAfter } from '../lib/record/project-record.ts'
import { TaxRate } from '../lib/record/scalars.ts'
import { anId, at, fresh, lead, leadShop, project, shellId } from './builders.ts'

export const aShop = (over: Partial<Shop> = {}): Shop => ({
  kind: 'shop',
  id: leadShop,
  name: 'Tarn Lane Coachworks',
  currency: 'GBP',
  timeZone: 'Europe/London',
  taxRegistered: true,
  taxRate: TaxRate.parse(2000),
  opensAt: '08:00',
  closesAt: '18:00',
  demo: false,
  createdAt: at(0),
  ...over,
})

export const aBay = (over: Partial<Bay> = {}): Bay => ({
  kind: 'bay',
  id: fresh('bay'),
  shop: leadShop,
  name: 'Bay 1',
  type: 'floor',
  retiredAt: null,
  ...over,
})

export const aMembership = (over: Partial<Membership> = {}): Membership => ({
  kind: 'membership',
  id: fresh('mbr'),
  shop: leadShop,
  person: fresh('psn'),
  role: 'manager',
  since: at(0),
  removedAt: null,
  ...over,
})

/** A shop book of those entities. */
export const aShopBook = (shop: ShopId, ...entities: Entity[]): ShopRecord =>
  shopAfter(emptyShopRecord(shop), { version: 1, entities })

export const aSlot = (over: Partial<Slot> = {}): Slot => ({
  kind: 'slot',
  id: fresh('slt'),
  project,
  shop: leadShop,
  bay: anId('bay', 'one'),
  assembly: shellId,
  stage: null,
  party: lead,
  from: at(24),
  to: at(48),
  state: 'agreed',
  askedAt: at(0),
  agreedAt: at(0),
  agreedBy: lead,
  window: null,
  reason: null,
  ...over,
})

export const anOpenWindow = (over: Partial<OpenWindow> = {}): OpenWindow => ({
  kind: 'openWindow',
  id: fresh('win'),
  project,
  assembly: shellId,
  bay: null,
  from: at(24),
  to: at(240),
  openedAt: at(0),
  closedAt: null,
  ...over,
})
