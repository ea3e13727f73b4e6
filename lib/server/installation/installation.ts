import type pg from 'pg'
import * as z from 'zod/mini'
import type { Installation } from '../../command/wire-access.ts'
import { MembershipRole, PartyRole } from '../../record/entities/people.ts'
import { PersonId } from '../../record/ids.ts'
import { Currency, Line, TaxRate, TimeZone } from '../../record/scalars.ts'
import type { PrismaClient } from '../generated/client.ts'
import type { Enter } from '../lane/enter.ts'
import type { Outcome } from '../lane/outcome.ts'
import { openTurns } from '../lane/turns.ts'
import { type Account, addAccount, dropAccount } from '../people/accounts.ts'
import { hashPassword } from '../people/password.ts'
import { readDemoPhone } from './demo-phone.ts'

/** Of all advisory locks of this database, the one for whoever sets it up. */
const SET_UP_LOCK = 4_714_201

/** An e-mail address, as far as its look tells. */
export const Email = z.string().check(
  z.maxLength(254),
  z.refine(
    (text) => /^\S+@\S+\.\S+$/.test(text.trim()),
    'an e-mail address such as ada@shop.example',
  ),
)

/** Body of `POST /api/installation/shop`. */
export const FirstShopInput = z.strictObject({
  shop: Line,
  currency: Currency,
  timeZone: TimeZone,
  taxRegistered: z.boolean(),
  taxRate: TaxRate,
  name: Line,
  email: Email,
  password: z.string(),
})
export type FirstShopInput = z.infer<typeof FirstShopInput>

/** The one database, by connections and by its client. */
export type Databases = { readonly pool: pg.Pool; readonly prisma: PrismaClient }

/** Whether nothing was set up yet: no shop and no car. */
export async function isEmpty(prisma: PrismaClient): Promise<boolean> {
  const select = { id: true }
  const [shop, project] = await Promise.all([
    prisma.shop.findFirst({ select }),
    prisma.project.findFirst({ select }),
  ])
  return shop === null && project === null
}

/** Runs `work` while nobody else sets up or removes, on any node; null where the installation isn't empty. */
export async function whileEmpty<T>(
  { pool, prisma }: Databases,
  work: () => Promise<T>,
): Promise<T | null> {
  return alone(pool, async () => ((await isEmpty(prisma)) ? work() : null))
}

/** One of this node holds a connection for the lock; a crowd of them would leave none for the work itself. */
const turn = openTurns(1)

/** Runs `work` while nobody else sets up or removes, on any node. */
export const alone = <T>(pool: pg.Pool, work: () => Promise<T>): Promise<T> =>
  turn(async () => {
    const client = await pool.connect()
    try {
      await client.query('select pg_advisory_lock($1)', [SET_UP_LOCK])
      return await work()
    } finally {
      // The lock goes with the connection.
      client.release(true)
    }
  })

/** Creates the first shop and the person who manages it; null where somebody was first. */
export const setUp = (
  databases: Databases,
  enter: Enter,
  input: FirstShopInput,
): Promise<{ readonly account: Account; readonly outcome: Outcome } | null> =>
  whileEmpty(databases, async () => {
    const { prisma } = databases
    // An account without a shop is left of a set-up that was cut short.
    await prisma.person.deleteMany()
    const { name, email, shop, currency, timeZone, taxRegistered, taxRate } = input
    const passwordHash = await hashPassword(input.password)
    const account = await addAccount(prisma, { name, email, passwordHash })
    const who = { person: account.id, proof: 'password' as const, provedAt: null }
    const outcome = await enter({
      who,
      as: { ...who, role: 'manager', party: null, shop: null },
      name: 'shop.create',
      input: { name: shop, currency, timeZone, taxRegistered, taxRate },
    })
    if (outcome.is !== 'done') await dropAccount(prisma, account.id)
    return { account, outcome }
  })

/** What a visitor may know before signing in. */
export async function readInstallation(
  prisma: PrismaClient,
  open: { readonly demoDoors: boolean; readonly loading: boolean; readonly mail: boolean },
): Promise<Installation> {
  const empty = !open.loading && (await isEmpty(prisma))
  const isOpen = open.demoDoors && !empty && !open.loading
  return {
    empty,
    demoOffered: empty && open.demoDoors,
    demoPersons: isOpen ? await readDemoPersons(prisma) : [],
    demoPhone: isOpen ? await readDemoPhone(prisma) : null,
    mail: open.mail,
  }
}

type DemoPerson = Installation['demoPersons'][number]

/** A door for each, by the first of the places that they belong to. */
async function readDemoPersons(prisma: PrismaClient): Promise<readonly DemoPerson[]> {
  const persons = await prisma.person.findMany({
    where: { demo: true },
    select: { id: true, name: true },
    orderBy: { id: 'asc' },
  })
  const those = { person: { in: persons.map(({ id }) => id) }, removedAt: null }
  const [members, participants] = await Promise.all([
    prisma.membership.findMany({ where: those }),
    prisma.participant.findMany({ where: those }),
  ])
  const [shops, parties, projects] = await Promise.all([
    prisma.shop.findMany({ where: { id: { in: members.map(({ shop }) => shop) } } }),
    prisma.party.findMany({ where: { id: { in: participants.map(({ party }) => party) } } }),
    prisma.project.findMany({ where: { id: { in: participants.map(({ project }) => project) } } }),
  ])
  const nameOf = new Map([...shops, ...projects].map(({ id, name }) => [id, name]))
  const roleOf = new Map(parties.map(({ id, role }) => [id, role]))
  const places = [
    ...members.map(({ person, shop, role }) => ({ person, role, place: nameOf.get(shop) ?? '' })),
    ...participants.map(({ person, party, project }) => ({
      person,
      role: roleOf.get(party) ?? '',
      place: nameOf.get(project) ?? '',
    })),
  ]
  return persons.flatMap(({ id, name }) => {
    const [first] = places
      .filter(({ person }) => person === id)
      .sort((a, b) => (a.place < b.place ? -1 : 1))
    if (first === undefined) return []
    const role = DoorRole.parse(first.role)
    return [{ id: PersonId.parse(id), name, role, at: `${role} of ${first.place}` }]
  })
}

const DoorRole = z.union([MembershipRole, PartyRole])
