import type { Installation } from '../../command/wire-access.ts'
import { DeviceId, PersonId, ShopId } from '../../record/ids.ts'
import type { PrismaClient } from '../generated/client.ts'
import type { Devices } from '../people/devices.ts'
import type { HandCodes } from '../people/hand-codes.ts'

/** The codes that the demonstration's hands sign with: shown on its door, so that anybody can try it. */
const CODES = ['6183', '4807', '7294', '3906', '8251']
const NAME = 'Paint bay phone'

/** Who works in the shop, with the code of each, in the order in which they came. */
async function handsOf(prisma: PrismaClient, shop: string) {
  const members = await prisma.membership.findMany({
    where: { shop, removedAt: null },
    orderBy: { person: 'asc' },
  })
  return members.flatMap(({ person }, at) => {
    const code = CODES[at]
    return code === undefined ? [] : [{ person: PersonId.parse(person), code }]
  })
}

/** Gives the lead shop of the demonstration a phone, and its hands their codes. */
export async function addDemoPhone(
  prisma: PrismaClient,
  devices: Devices,
  codes: HandCodes,
): Promise<void> {
  const lead = await prisma.party.findFirst({
    where: { lead: true, shop: { not: null } },
    orderBy: { id: 'asc' },
  })
  const shop = ShopId.safeParse(lead?.shop)
  if (!shop.success) return
  const hands = await handsOf(prisma, shop.data)
  const manager = await prisma.membership.findFirst({
    where: { shop: shop.data, role: 'manager', removedAt: null },
  })
  const by = PersonId.safeParse(manager?.person)
  if (!by.success) return
  await devices.add(shop.data, NAME, by.data, true)
  for (const { person, code } of hands) await codes.set(shop.data, person, code)
}

/** The demonstration's phone, as its door offers it; null where a manager has taken it out. */
export async function readDemoPhone(prisma: PrismaClient): Promise<Installation['demoPhone']> {
  const phone = await prisma.shopDevice.findFirst({ where: { demo: true, revokedAt: null } })
  if (phone === null) return null
  const hands = await handsOf(prisma, phone.shop)
  const people = await prisma.person.findMany({
    where: { id: { in: hands.map(({ person }) => person) } },
    select: { id: true, name: true },
  })
  const shop = await prisma.shop.findUnique({ where: { id: phone.shop }, select: { name: true } })
  return {
    id: DeviceId.parse(phone.id),
    name: phone.name,
    shop: ShopId.parse(phone.shop),
    shopName: shop?.name ?? '',
    hands: hands.flatMap(({ person, code }) => {
      const name = people.find(({ id }) => id === person)?.name
      return name === undefined ? [] : [{ name, code }]
    }),
  }
}
