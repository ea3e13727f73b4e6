import { createHash, randomBytes } from 'node:crypto'
import { PersonId } from '../../record/ids.ts'
import { Instant } from '../../record/scalars.ts'
import { freshKey } from '../fresh-key.ts'
import type { Queryable } from '../load.ts'

/** What a link opens: an account's first password, a session, or one handover. */
export type Purpose = 'invitation' | 'magic' | 'receipt'

/** How long each kind of link is good, in ms. */
const LIFE_MS: { readonly [P in Purpose]: number } = {
  invitation: 14 * 86_400_000,
  magic: 20 * 60_000,
  receipt: 14 * 86_400_000,
}

/** A link as it lies in the database: its token's hash only. `entity` is the handover of a receipt. */
export type Link = {
  readonly id: string
  readonly purpose: Purpose
  readonly person: PersonId | null
  readonly record: string | null
  readonly entity: string | null
  readonly expiresAt: Instant
}

type Row = Omit<Link, 'person' | 'expiresAt'> & {
  readonly person: string | null
  readonly expiresAt: Date
}

const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex')

const linkOf = (row: Row | undefined): Link | null =>
  row === undefined
    ? null
    : {
        ...row,
        person: row.person === null ? null : PersonId.parse(row.person),
        expiresAt: Instant.parse(row.expiresAt.toISOString()),
      }

const COLUMNS = '"id", "purpose", "person", "record", "entity", "expiresAt"'

/** Makes a link's token: 256 random bits, shown once. */
export async function addLink(
  db: Queryable,
  purpose: Purpose,
  to: { readonly person?: PersonId; readonly record?: string; readonly entity?: string },
): Promise<{ readonly token: string; readonly expiresAt: Instant }> {
  const token = randomBytes(32).toString('base64url')
  const expiresAt = new Date(Date.now() + LIFE_MS[purpose])
  await db.query(
    `insert into "SignInLink" ("id", "purpose", "tokenHash", "person", "record", "entity", "expiresAt")
     values ($1, $2, $3, $4, $5, $6, $7)`,
    [
      `lnk_${freshKey().replaceAll('-', '')}`,
      purpose,
      hashOf(token),
      to.person ?? null,
      to.record ?? null,
      to.entity ?? null,
      expiresAt,
    ],
  )
  return { token, expiresAt: Instant.parse(expiresAt.toISOString()) }
}

/** The link with that token, not used up; null where there is none, or its time is over. */
export async function readLink(
  db: Queryable,
  purpose: Purpose,
  token: string,
): Promise<Link | null> {
  const { rows } = await db.query<Row>(
    `select ${COLUMNS} from "SignInLink"
     where "tokenHash" = $1 and "purpose" = $2 and "usedAt" is null and "expiresAt" > now()`,
    [hashOf(token), purpose],
  )
  return linkOf(rows[0])
}

/** The link of a receipt, used or not: who received something may look at what they signed. */
export async function readReceiptLink(db: Queryable, token: string): Promise<Link | null> {
  const { rows } = await db.query<Row>(
    `select ${COLUMNS} from "SignInLink"
     where "tokenHash" = $1 and "purpose" = 'receipt' and "expiresAt" > now()`,
    [hashOf(token)],
  )
  return linkOf(rows[0])
}

/** Takes the link, so that nobody can take it again: of two at once one gets it. */
export async function takeLink(
  db: Queryable,
  purpose: Purpose,
  token: string,
): Promise<Link | null> {
  const { rows } = await db.query<Row>(
    `update "SignInLink" set "usedAt" = now()
     where "tokenHash" = $1 and "purpose" = $2 and "usedAt" is null and "expiresAt" > now()
     returning ${COLUMNS}`,
    [hashOf(token), purpose],
  )
  return linkOf(rows[0])
}

/** Takes back every open link of a person: they were removed, or set a password. */
export async function closeLinks(db: Queryable, person: PersonId): Promise<void> {
  await db.query(
    'update "SignInLink" set "usedAt" = now() where "person" = $1 and "usedAt" is null',
    [person],
  )
}
