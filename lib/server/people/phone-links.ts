import type { HandedLink } from '../../command/wire-access.ts'
import type { PhoneLink } from '../../command/wire-device.ts'
import { DeviceId, type PersonId } from '../../record/ids.ts'
import type { PrismaClient } from '../generated/client.ts'
import { handedLink } from '../mail.ts'
import type { Reading } from '../views/reading.ts'
import type { Devices, ShopDevice } from './devices.ts'
import { addLink, closeLinksTo, readLink, takeLink } from './links.ts'

/** Links that make a phone of the shop of the one on which they are opened: once, within a quarter of an hour. */
export type PhoneLinks = {
  /** A new one for that phone; the one before opens nothing any more. */
  readonly make: (device: DeviceId, by: PersonId) => Promise<HandedLink>
  readonly read: (token: string) => Promise<PhoneLink | null>
  /** Uses it up; null where it is none, or no more. */
  readonly take: (token: string) => Promise<ShopDevice | null>
  readonly close: (device: DeviceId) => Promise<void>
}

/** Links under `origin`. */
export function openPhoneLinks(
  prisma: PrismaClient,
  devices: Devices,
  reading: Reading,
  origin: string,
): PhoneLinks {
  async function find(token: string) {
    const link = await readLink(prisma, 'device', token)
    const id = DeviceId.safeParse(link?.entity)
    const device = id.success ? await devices.find(id.data) : null
    return link === null || device === null ? null : { link, device }
  }
  return {
    async make(device, by) {
      await closeLinksTo(prisma, device)
      const { token, expiresAt } = await addLink(prisma, 'device', { person: by, entity: device })
      return handedLink(`${origin}/phone/${token}`, expiresAt, false)
    },
    async read(token) {
      const found = await find(token)
      if (found === null) return null
      const { name, shop } = found.device
      const shopName = (await reading.shop(shop))?.shops.rows.get(shop)?.name ?? ''
      return { name, shopName, expiresAt: found.link.expiresAt }
    },
    async take(token) {
      const found = await find(token)
      if (found === null || (await takeLink(prisma, 'device', token)) === null) return null
      return found.device
    },
    close: (device) => closeLinksTo(prisma, device),
  }
}
