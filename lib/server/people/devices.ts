import { createHash, createHmac, randomBytes } from 'node:crypto'
import { DeviceId, PersonId, ShopId } from '../../record/ids.ts'
import { Instant } from '../../record/scalars.ts'
import { freshKey } from '../fresh-key.ts'
import type { PrismaClient } from '../generated/client.ts'
import type { Queryable } from '../load.ts'

/** A phone is signed in for its shop until somebody ends it; browsers keep a cookie at most this long, in seconds. */
const COOKIE_SECONDS = 400 * 24 * 3600
/** How old what is known of a phone may be before it is read again, in ms: one that is out is out within a second. */
const KNOWN_MS = 1000
const KNOWN_MOST = 5000
/** When a phone was last seen is written this often, in ms. */
const SEEN_MS = 60_000

/** A phone that is signed in for a shop. `addedBy` answers for it: the manager who made it one. */
export type ShopDevice = {
  readonly id: DeviceId
  readonly shop: ShopId
  readonly name: string
  readonly addedBy: PersonId
  readonly demo: boolean
}

/** A phone as the shop's managers see it. */
export type ListedDevice = ShopDevice & {
  readonly addedAt: Instant
  readonly lastSeenAt: Instant | null
  /** Brought in: not only named yet. */
  readonly isIn: boolean
}

/** The phones of shops. Their tokens lie in the database as hashes. */
export type Devices = {
  /** Which phone sent this `Cookie` header; null where it is none, or no longer. */
  readonly of: (cookie: string | null | undefined) => Promise<ShopDevice | null>
  readonly isGood: (device: ShopDevice) => Promise<boolean>
  /** Names a phone that is still to be brought in. */
  readonly add: (shop: ShopId, name: string, by: PersonId, demo?: boolean) => Promise<ShopDevice>
  /** Brings a phone in: `Set-Cookie` headers for its browser; null where it is out. What it was before is it no longer. */
  readonly bringIn: (id: DeviceId) => Promise<readonly string[] | null>
  readonly find: (id: DeviceId) => Promise<ShopDevice | null>
  readonly list: (shop: ShopId) => Promise<readonly ListedDevice[]>
  /** Ends it, on every node within a second; false where it is none of this shop's. */
  readonly revoke: (shop: ShopId, id: DeviceId, by: PersonId | null) => Promise<boolean>
  /** A `Set-Cookie` header that takes it away. */
  readonly noCookie: () => string
  readonly namesOf: (ids: ReadonlySet<DeviceId>) => Promise<ReadonlyMap<string, string>>
}

const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex')
const COLUMNS = { id: true, shop: true, name: true, addedBy: true, demo: true } as const

type Row = {
  readonly id: string
  readonly shop: string
  readonly name: string
  readonly addedBy: string
  readonly demo: boolean
}
const deviceOf = ({ id, shop, name, addedBy, demo }: Row): ShopDevice => ({
  id: DeviceId.parse(id),
  shop: ShopId.parse(shop),
  name,
  addedBy: PersonId.parse(addedBy),
  demo,
})

/** The phones that `db` knows; `secure` where people reach us by https. `secret` makes the token of the demonstration's. */
export function openDevices(
  prisma: PrismaClient,
  db: Queryable,
  secret: string,
  secure: boolean,
): Devices {
  const cookieName = `${secure ? '__Secure-' : ''}fettleyard-device`
  const known = new Map<
    string,
    { readonly readMs: number; readonly found: Promise<ShopDevice | null> }
  >()
  const seen = new Map<string, number>()

  async function read(tokenHash: string): Promise<ShopDevice | null> {
    const { rows } = await db.query<Row>({
      name: 'shop-device',
      text: 'select "id", "shop", "name", "addedBy", "demo" from "ShopDevice" where "tokenHash" = $1 and "revokedAt" is null',
      values: [tokenHash],
    })
    const [row] = rows
    if (row === undefined) return null
    if (Date.now() - (seen.get(row.id) ?? 0) > SEEN_MS) {
      seen.set(row.id, Date.now())
      await db.query('update "ShopDevice" set "lastSeenAt" = $2 where "id" = $1', [
        row.id,
        new Date(),
      ])
    }
    return deviceOf(row)
  }

  function byToken(token: string): Promise<ShopDevice | null> {
    const tokenHash = hashOf(token)
    const before = known.get(tokenHash)
    if (before !== undefined && Date.now() - before.readMs < KNOWN_MS) return before.found
    if (known.size >= KNOWN_MOST) known.clear()
    const found = read(tokenHash)
    known.set(tokenHash, { readMs: Date.now(), found })
    found.catch(() => known.delete(tokenHash))
    return found
  }

  const setCookie = (value: string, seconds: number): string =>
    `${cookieName}=${value}; Path=/; HttpOnly; SameSite=Lax; Max-Age=${seconds}${secure ? '; Secure' : ''}`
  const find = async (id: DeviceId): Promise<ShopDevice | null> => {
    const row = await prisma.shopDevice.findFirst({
      where: { id, revokedAt: null },
      select: COLUMNS,
    })
    return row === null ? null : deviceOf(row)
  }

  return {
    async of(cookie) {
      const token = tokenIn(cookie ?? '', cookieName)
      return token === null ? null : byToken(token)
    },
    isGood: async (device) => (await find(device.id)) !== null,
    async add(shop, name, by, demo = false) {
      const id = DeviceId.parse(`dev_${freshKey().replaceAll('-', '')}`)
      await prisma.shopDevice.create({ data: { id, shop, name, addedBy: by, demo } })
      return { id, shop, name, addedBy: by, demo }
    },
    async bringIn(id) {
      const device = await find(id)
      if (device === null) return null
      // The demonstration's phone is opened in any number of browsers, and stays the same phone.
      const token = device.demo
        ? createHmac('sha256', secret).update(id).digest('base64url')
        : randomBytes(32).toString('base64url')
      const { count } = await prisma.shopDevice.updateMany({
        where: { id, revokedAt: null },
        data: { tokenHash: hashOf(token) },
      })
      known.clear()
      return count === 0 ? null : [setCookie(token, COOKIE_SECONDS)]
    },
    find,
    async list(shop) {
      const rows = await prisma.shopDevice.findMany({
        where: { shop, revokedAt: null },
        orderBy: { addedAt: 'asc' },
      })
      return rows.map((row) => ({
        ...deviceOf(row),
        addedAt: Instant.parse(row.addedAt.toISOString()),
        lastSeenAt: row.lastSeenAt === null ? null : Instant.parse(row.lastSeenAt.toISOString()),
        isIn: row.tokenHash !== null,
      }))
    },
    async revoke(shop, id, by) {
      const { count } = await prisma.shopDevice.updateMany({
        where: { id, shop, revokedAt: null },
        data: { revokedAt: new Date(), revokedBy: by, tokenHash: null },
      })
      known.clear()
      return count > 0
    },
    noCookie: () => setCookie('', 0),
    async namesOf(ids) {
      if (ids.size === 0) return new Map()
      const rows = await prisma.shopDevice.findMany({
        where: { id: { in: [...ids] } },
        select: { id: true, name: true },
      })
      return new Map(rows.map(({ id, name }) => [id, name]))
    },
  }
}

function tokenIn(header: string, name: string): string | null {
  for (const pair of header.split(';')) {
    const [key = '', ...value] = pair.trim().split('=')
    if (key === name && value.join('=') !== '') return value.join('=')
  }
  return null
}
