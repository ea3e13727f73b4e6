import type { Context, Hono } from 'hono'
import * as z from 'zod/mini'
import type { DeviceHand, DeviceHere, MyCodes, ShopPhones } from '../../command/wire-device.ts'
import { DeviceId, PersonId, ShopId } from '../../record/ids.ts'
import type { ShopRecord } from '../../record/project-record.ts'
import { Line } from '../../record/scalars.ts'
import { all } from '../../record/table.ts'
import { codeFaultWords } from '../../words/code-words.ts'
import type { Doors } from '../doors.ts'
import { lookerOf, type OnPhone } from '../people/looker.ts'
import type { Session } from '../people/session.ts'
import { addressOf, bodyOf, checked, orNotFound, Refused, signedIn } from './door.ts'

const NewPhone = z.strictObject({ name: Line, here: z.boolean() })
const OwnCode = z.strictObject({ code: z.string() })
const FirstCode = z.strictObject({ person: PersonId, once: z.string(), code: z.string() })

/** Phones that are signed in for a shop, and the codes that its hands sign with on them. */
export function deviceRoutes(api: Hono, doors: Doors): void {
  const {
    devices,
    handCodes,
    installation,
    limits,
    names,
    phoneLinks,
    reading,
    sessions,
    signing,
  } = doors

  async function handsOf(book: ShopRecord): Promise<DeviceHand[]> {
    const members = all(book.memberships).filter(({ removedAt }) => removedAt === null)
    const people = await names(new Set(members.map(({ person }) => person)))
    const states = await handCodes.states(book.id)
    const withCode = new Set(states.flatMap((is) => (is.setAt === null ? [] : [is.person])))
    return members
      .map(({ person }) => ({
        person,
        name: people[person] ?? '',
        hasCode: withCode.has(person),
      }))
      .sort((a, b) => a.name.localeCompare(b.name))
  }

  /** The shop's phone that asks. @throws {Refused} 401 */
  async function onPhone(context: Context): Promise<OnPhone> {
    const looker = await lookerOf(context.req.header('cookie'), doors)
    if (looker !== null && 'phone' in looker) return looker
    throw new Refused(401, '', 'This phone is not signed in for a shop, or no longer.')
  }

  /** The book of a shop that the person who is signed in manages. @throws {Refused} */
  async function managed(context: Context): Promise<{ session: Session; book: ShopRecord }> {
    const session = await signedIn(context, sessions)
    const id = ShopId.safeParse(context.req.param('id'))
    const book = orNotFound(id.success ? await reading.shop(id.data) : null)
    const role = orNotFound(await reading.roleIn(session, book))
    if (role !== 'manager')
      throw new Refused(403, '', 'Phones and codes are for a manager of the shop to give out.')
    return { session, book }
  }

  async function phones(book: ShopRecord): Promise<ShopPhones> {
    const [listed, states, hands] = await Promise.all([
      devices.list(book.id),
      handCodes.states(book.id),
      handsOf(book),
    ])
    const people = await names(new Set(listed.map(({ addedBy }) => addedBy)))
    return {
      devices: listed.map(({ id, name, addedBy, addedAt, lastSeenAt, isIn }) => ({
        id,
        name,
        addedBy: people[addedBy] ?? '',
        addedAt,
        lastSeenAt,
        isIn,
      })),
      hands: hands.map((hand) => {
        const state = states.find(({ person }) => person === hand.person)
        return { ...hand, setAt: state?.setAt ?? null, onceUntil: state?.onceUntil ?? null }
      }),
    }
  }

  async function linkTo(session: Session, id: DeviceId) {
    await limits.link(session.person)
    return phoneLinks.make(id, session.person)
  }

  /** Makes this browser the shop's phone; whoever was signed in on it is so no longer. */
  async function bringIn(context: Context, id: DeviceId): Promise<void> {
    const cookies = await devices.bringIn(id)
    if (cookies === null) throw new Refused(404, '', 'That phone was taken out meanwhile.')
    for (const cookie of [...cookies, sessions.noCookie()]) {
      context.header('set-cookie', cookie, { append: true })
    }
  }

  async function here({ phone }: OnPhone): Promise<DeviceHere> {
    const book = orNotFound(await reading.shop(phone.shop))
    const { id, name, shop, demo } = phone
    const shopName = book.shops.rows.get(shop)?.name ?? ''
    return { id, name, shop, shopName, demo, hands: await handsOf(book) }
  }

  api.get('/device', async (context) => context.json(await here(await onPhone(context))))

  api.post('/device/leave', async (context) => {
    const { phone } = await onPhone(context)
    // The demonstration's phone is open in other browsers as well.
    if (!phone.demo) await devices.revoke(phone.shop, phone.id, null)
    context.header('set-cookie', devices.noCookie())
    return context.json({})
  })

  api.post('/device/code', async (context) => {
    const phone = await onPhone(context)
    const set = await signing.setFirst(phone, await bodyOf(context, FirstCode))
    if (set === 'not that one')
      throw new Refused(
        403,
        'once',
        'That is not the code a manager showed you, or its time is over. Ask for a new one.',
      )
    if (set !== 'set') throw new Refused(400, 'code', codeFaultWords[set])
    return context.json(await here(phone))
  })

  api.get('/shops/:id/devices', async (context) => {
    const { book } = await managed(context)
    return context.json(await phones(book))
  })

  api.post('/shops/:id/devices', async (context) => {
    const { session, book } = await managed(context)
    const { name, here: isHere } = await bodyOf(context, NewPhone)
    const known = await devices.list(book.id)
    if (known.some((one) => one.name.toLowerCase() === name.toLowerCase()))
      throw new Refused(
        409,
        'name',
        'A phone of the shop has this name. The journal names it: take another.',
      )
    const { id } = await devices.add(book.id, name, session.person)
    if (!isHere) return context.json(await linkTo(session, id), 201)
    await bringIn(context, id)
    return context.json({ id }, 201)
  })

  api.post('/shops/:id/devices/:device/link', async (context) => {
    const { session, book } = await managed(context)
    const id = checked(context.req.param('device'), DeviceId)
    const device = await devices.find(id)
    orNotFound(device?.shop === book.id ? device : null)
    return context.json(await linkTo(session, id), 201)
  })

  api.post('/shops/:id/devices/:device/revoke', async (context) => {
    const { session, book } = await managed(context)
    const id = checked(context.req.param('device'), DeviceId)
    // First: it says whether the phone is this shop's. A link that is open still leads nowhere then.
    orNotFound((await devices.revoke(book.id, id, session.person)) || null)
    await phoneLinks.close(id)
    return context.json(await phones(book))
  })

  api.post('/shops/:id/hands/:person/code', async (context) => {
    const { session, book } = await managed(context)
    const person = checked(context.req.param('person'), PersonId)
    const isHere = all(book.memberships).some(
      (one) => one.person === person && one.removedAt === null,
    )
    orNotFound(isHere || null)
    return context.json(await handCodes.reset(book.id, person, session.person), 201)
  })

  async function myCodes(session: Session): Promise<MyCodes> {
    const found: MyCodes[number][] = []
    for (const shop of (await reading.shopsOf(session)).keys()) {
      const book = await reading.shop(shop)
      const state = (await handCodes.states(shop)).find(({ person }) => person === session.person)
      const by = state?.resetBy ?? null
      const people = await names(new Set(by === null ? [] : [by]))
      found.push({
        shop,
        shopName: book?.shops.rows.get(shop)?.name ?? '',
        setAt: state?.setAt ?? null,
        resetBy: by === null ? null : (people[by] ?? null),
        resetAt: state?.resetAt ?? null,
      })
    }
    return found
  }

  api.get('/my-codes', async (context) =>
    context.json(await myCodes(await signedIn(context, sessions))),
  )

  api.post('/my-codes/:id', async (context) => {
    const session = await signedIn(context, sessions)
    const { code } = await bodyOf(context, OwnCode)
    const shop = checked(context.req.param('id'), ShopId)
    orNotFound((await reading.shopsOf(session)).has(shop) || null)
    const fault = await handCodes.set(shop, session.person, code)
    if (fault !== null) throw new Refused(400, 'code', codeFaultWords[fault])
    return context.json(await myCodes(session))
  })

  api.get('/phone-links/:token', async (context) =>
    context.json(orNotFound(await phoneLinks.read(context.req.param('token')))),
  )

  api.post('/phone-links/:token', async (context) => {
    await limits.token(addressOf(context))
    const device = await phoneLinks.take(context.req.param('token'))
    if (device === null)
      throw new Refused(
        404,
        '',
        'This link was used, or its fifteen minutes are over. Ask a manager of the shop for a new one.',
      )
    await bringIn(context, device.id)
    return context.json({ shop: device.shop })
  })

  api.post('/installation/demo-phone', async (context) => {
    const { demoPhone } = await installation()
    if (demoPhone === null)
      throw new Refused(404, '', 'The demonstration has no phone here, or it was taken out.')
    await bringIn(context, demoPhone.id)
    return context.json({ shop: demoPhone.shop })
  })
}
