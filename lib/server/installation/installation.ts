import type pg from 'pg'
import * as z from 'zod/mini'
import type { Installation } from '../../command/wire-access.ts'
import { MembershipRole, PartyRole } from '../../record/entities/people.ts'
import { PersonId } from '../../record/ids.ts'
import { Currency, Line, TaxRate, TimeZone } from '../../record/scalars.ts'
import type { Enter } from '../lane/enter.ts'
import type { Outcome } from '../lane/outcome.ts'
import type { Queryable } from '../load.ts'
import { type Account, addAccount } from '../people/accounts.ts'
import { hashPassword } from '../people/password.ts'

/** Of all advisory locks of this database, the one for whoever sets it up. */
const SET_UP_LOCK = 4_714_201

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

/** Whether nothing was set up yet: no shop and no car. */
export async function isEmpty(db: Queryable): Promise<boolean> {
  const { rows } = await db.query<{ readonly empty: boolean }>(
    'select not exists (select from "Shop") and not exists (select from "Project") as empty',
  )
  return rows[0]?.empty === true
}

/** Runs `work` while nobody else sets up or removes, on any node; null where the installation isn't empty. */
export async function whileEmpty<T>(pool: pg.Pool, work: () => Promise<T>): Promise<T | null> {
  return alone(pool, async () => ((await isEmpty(pool)) ? work() : null))
}

/** Runs `work` while nobody else sets up or removes, on any node. */
export async function alone<T>(pool: pg.Pool, work: () => Promise<T>): Promise<T> {
  const client = await pool.connect()
  try {
    await client.query('select pg_advisory_lock($1)', [SET_UP_LOCK])
    try {
      return await work()
    } finally {
      await client.query('select pg_advisory_unlock($1)', [SET_UP_LOCK])
    }
  } finally {
    client.release()
  }
}

/** Creates the first shop and the person who manages it; null where somebody was first. */
export const setUp = (
  pool: pg.Pool,
  enter: Enter,
  input: FirstShopInput,
): Promise<{ readonly account: Account; readonly outcome: Outcome } | null> =>
  whileEmpty(pool, async () => {
    // An account without a shop is left of a set-up that was cut short.
    await pool.query('delete from "Person"')
    const { name, email, shop, currency, timeZone, taxRegistered, taxRate } = input
    const passwordHash = await hashPassword(input.password)
    const account = await addAccount(pool, { name, email, passwordHash })
    const who = { person: account.id, proof: 'password' as const, provedAt: null }
    const outcome = await enter({
      who,
      as: { ...who, role: 'manager', party: null, shop: null },
      name: 'shop.create',
      input: { name: shop, currency, timeZone, taxRegistered, taxRate },
    })
    if (outcome.is !== 'done')
      await pool.query('delete from "Person" where "id" = $1', [account.id])
    return { account, outcome }
  })

/** What a visitor may know before signing in. */
export async function readInstallation(
  db: Queryable,
  open: { readonly demoDoors: boolean; readonly loading: boolean; readonly mail: boolean },
): Promise<Installation> {
  const empty = !open.loading && (await isEmpty(db))
  return {
    empty,
    demoOffered: empty && open.demoDoors,
    demoPersons: open.demoDoors && !empty && !open.loading ? await readDemoPersons(db) : [],
    mail: open.mail,
  }
}

const Door = z.object({
  id: PersonId,
  name: z.string(),
  role: z.union([MembershipRole, PartyRole]),
  place: z.string(),
})

async function readDemoPersons(db: Queryable): Promise<Installation['demoPersons']> {
  const { rows } = await db.query(
    `select distinct on ("id") * from (
       select p."id", p."name", m."role", s."name" as place, s."made" as made
         from "Person" p join "Membership" m on m."person" = p."id" and m."removedAt" is null
         join "Shop" s on s."id" = m."shop" where p."demo"
       union all
       select p."id", p."name", y."role", j."name" as place, 1 as made
         from "Person" p join "Participant" c on c."person" = p."id" and c."removedAt" is null
         join "Party" y on y."id" = c."party" join "Project" j on j."id" = c."project" where p."demo"
     ) doors order by "id", place`,
  )
  return rows.map((row) => {
    const { id, name, role, place } = Door.parse(row)
    return { id, name, role, at: `${role} of ${place}` }
  })
}
