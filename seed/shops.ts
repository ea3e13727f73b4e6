import { ShopId } from '../lib/record/ids.ts'
import { plus, ZONE } from './calendar.ts'
import { cast, type Firm, firms } from './cast.ts'
import type { Stage } from './seam.ts'
import type { Scene, Yard } from './yard.ts'

/** Everybody gets an account. */
export async function bringPeople(stage: Stage, yard: Yard): Promise<void> {
  for (const { name, email } of cast) yard.people.set(name, await stage.person(name, email))
}

/** The shops open their books, long before the first car comes. */
export const shopScenes = ({ calendar }: Yard): Scene[] =>
  firms.map((firm, i) => {
    const at = plus(calendar.at('-52 Mon 9'), 30 * i)
    return { at, play: (yard) => open(yard, firm, at) }
  })

async function open(yard: Yard, firm: Firm, at: Scene['at']): Promise<void> {
  const [manager = '', ...hands] = firm.people
  const opened = await yard.press({
    at,
    who: manager,
    name: 'shop.create',
    input: {
      name: firm.name,
      currency: 'GBP',
      timeZone: ZONE,
      taxRegistered: firm.taxRegistered,
      taxRate: firm.taxRegistered ? 2000 : 0,
      opensAt: '08:00',
      closesAt: '17:30',
      demo: true,
    },
  })
  const shop = ShopId.parse(opened.find(({ kind }) => kind === 'shop')?.id)
  yard.shops.set(firm.key, shop)
  const press = (name: 'bay.add' | 'membership.add', input: { readonly [key: string]: string }) =>
    yard.press({ at, who: manager, name, input, record: shop })
  for (const hand of hands) {
    await press('membership.add', { person: yard.person(hand), role: 'hand' })
  }
  for (const [name, type] of firm.bays) {
    const made = await press('bay.add', { name, type })
    const bay = made.find(({ kind }) => kind === 'bay')
    if (bay !== undefined) yard.bays.set(`${firm.key}/${name}`, { shop, bay: bay.id })
  }
}
