import { PersonId } from '../../record/ids.ts'
import { freshId } from '../fresh-key.ts'
import type { PrismaClient } from '../generated/client.ts'

/** A person's account: outside the records, which hold its id only. */
export type Account = {
  readonly id: PersonId
  readonly name: string
  readonly email: string
  readonly passwordHash: string | null
  readonly demo: boolean
}

type Row = Omit<Account, 'id'> & { readonly id: string }
const COLUMNS = { id: true, name: true, email: true, passwordHash: true, demo: true } as const
const accountOf = (row: Row | null): Account | null =>
  row === null ? null : { ...row, id: PersonId.parse(row.id) }

/** The account with that e-mail address, in any case; null where there is none or it was removed. */
export async function accountByEmail(prisma: PrismaClient, email: string): Promise<Account | null> {
  const where = { email: email.trim(), removedAt: null }
  return accountOf(await prisma.person.findFirst({ where, select: COLUMNS }))
}

/** The account with that id; null where there is none or it was removed. */
export async function accountById(prisma: PrismaClient, id: string): Promise<Account | null> {
  const where = { id, removedAt: null }
  return accountOf(await prisma.person.findFirst({ where, select: COLUMNS }))
}

/** Makes an account; one without a password waits for its invitation to be taken up. */
export async function addAccount(
  prisma: PrismaClient,
  person: {
    readonly name: string
    readonly email: string
    readonly passwordHash: string | null
    readonly demo?: boolean
  },
): Promise<Account> {
  const { name, passwordHash, demo = false } = person
  const account = { id: freshId('psn'), name, email: person.email.trim(), passwordHash, demo }
  await prisma.person.create({ data: account })
  return account
}

/** Takes an account back that nothing was done with yet. */
export async function dropAccount(prisma: PrismaClient, id: PersonId): Promise<void> {
  await prisma.person.deleteMany({ where: { id } })
}

/** Sets a new password's hash. */
export async function setPassword(
  prisma: PrismaClient,
  id: PersonId,
  passwordHash: string,
): Promise<void> {
  await prisma.person.updateMany({ where: { id }, data: { passwordHash } })
}

/** Names of those persons, by id; whoever is not there is left out. */
export async function namesOf(
  prisma: PrismaClient,
  ids: ReadonlySet<string>,
): Promise<{ readonly [person: string]: string }> {
  if (ids.size === 0) return {}
  const where = { id: { in: [...ids] } }
  const rows = await prisma.person.findMany({ where, select: { id: true, name: true } })
  return Object.fromEntries(rows.map(({ id, name }) => [id, name]))
}
