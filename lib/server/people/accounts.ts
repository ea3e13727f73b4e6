import { PersonId } from '../../record/ids.ts'
import { freshId } from '../fresh-key.ts'
import type { Queryable } from '../load.ts'

/** A person's account: outside the records, which hold its id only. */
export type Account = {
  readonly id: PersonId
  readonly name: string
  readonly email: string
  readonly passwordHash: string | null
  readonly demo: boolean
}

type Row = Omit<Account, 'id'> & { readonly id: string }
const COLUMNS = '"id", "name", "email"::text as "email", "passwordHash", "demo"'
const accountOf = (row: Row | undefined): Account | null =>
  row === undefined ? null : { ...row, id: PersonId.parse(row.id) }

/** The account with that e-mail address, in any case; null where there is none or it was removed. */
export async function accountByEmail(db: Queryable, email: string): Promise<Account | null> {
  const { rows } = await db.query<Row>(
    `select ${COLUMNS} from "Person" where "email" = $1 and "removedAt" is null`,
    [email.trim()],
  )
  return accountOf(rows[0])
}

/** The account with that id; null where there is none or it was removed. */
export async function accountById(db: Queryable, id: string): Promise<Account | null> {
  const { rows } = await db.query<Row>(
    `select ${COLUMNS} from "Person" where "id" = $1 and "removedAt" is null`,
    [id],
  )
  return accountOf(rows[0])
}

/** Makes an account; one without a password waits for its invitation to be taken up. */
export async function addAccount(
  db: Queryable,
  person: {
    readonly name: string
    readonly email: string
    readonly passwordHash: string | null
    readonly demo?: boolean
  },
): Promise<Account> {
  const { name, passwordHash, demo = false } = person
  const account = { id: freshId('psn'), name, email: person.email.trim(), passwordHash, demo }
  await db.query(
    'insert into "Person" ("id", "name", "email", "passwordHash", "demo") values ($1, $2, $3, $4, $5)',
    [account.id, name, account.email, passwordHash, demo],
  )
  return account
}

/** Sets a new password's hash. */
export async function setPassword(db: Queryable, id: PersonId, hash: string): Promise<void> {
  await db.query('update "Person" set "passwordHash" = $2 where "id" = $1', [id, hash])
}

/** Names of those persons, by id; whoever is not there is left out. */
export async function namesOf(
  db: Queryable,
  ids: ReadonlySet<string>,
): Promise<{ readonly [person: string]: string }> {
  if (ids.size === 0) return {}
  const { rows } = await db.query<{ readonly id: string; readonly name: string }>(
    'select "id", "name" from "Person" where "id" = any($1)',
    [[...ids]],
  )
  return Object.fromEntries(rows.map(({ id, name }) => [id, name]))
}
