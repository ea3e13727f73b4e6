import { createHash, randomBytes } from 'node:crypto'
import * as z from 'zod/mini'
import { PersonId } from '../../record/ids.ts'
import { Instant } from '../../record/scalars.ts'
import { freshKey } from '../fresh-key.ts'
import type { PrismaClient } from '../generated/client.ts'

/** What a link opens: an account's first password, a session, one handover, or that a phone becomes the shop's. */
const Purpose = z.enum(['invitation', 'magic', 'receipt', 'device'])
export type Purpose = z.infer<typeof Purpose>

/** How long each kind of link is good, in ms. */
const LIFE_MS: { readonly [P in Purpose]: number } = {
  invitation: 14 * 86_400_000,
  magic: 20 * 60_000,
  receipt: 14 * 86_400_000,
  device: 15 * 60_000,
}

/** A link as it lies in the database: its token's hash only. `entity` is the handover of a receipt, or the phone. */
export type Link = {
  readonly id: string
  readonly purpose: Purpose
  readonly person: PersonId | null
  readonly record: string | null
  readonly entity: string | null
  readonly expiresAt: Instant
}

type Row = Omit<Link, 'purpose' | 'person' | 'expiresAt'> & {
  readonly purpose: string
  readonly person: string | null
  readonly expiresAt: Date
}

const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex')

const linkOf = (row: Row | null | undefined): Link | null =>
  row == null
    ? null
    : {
        ...row,
        purpose: Purpose.parse(row.purpose),
        person: row.person === null ? null : PersonId.parse(row.person),
        expiresAt: Instant.parse(row.expiresAt.toISOString()),
      }

const COLUMNS = {
  id: true,
  purpose: true,
  person: true,
  record: true,
  entity: true,
  expiresAt: true,
} as const

/** A link that still opens something. */
const openLink = (purpose: Purpose, token: string) => ({
  tokenHash: hashOf(token),
  purpose,
  usedAt: null,
  expiresAt: { gt: new Date() },
})

/** Makes a link's token: 256 random bits, shown once. */
export async function addLink(
  prisma: PrismaClient,
  purpose: Purpose,
  to: { readonly person?: PersonId; readonly record?: string; readonly entity?: string },
): Promise<{ readonly token: string; readonly expiresAt: Instant }> {
  const token = randomBytes(32).toString('base64url')
  const expiresAt = new Date(Date.now() + LIFE_MS[purpose])
  const id = `lnk_${freshKey().replaceAll('-', '')}`
  const data = { ...to, id, purpose, tokenHash: hashOf(token), expiresAt }
  await prisma.signInLink.create({ data })
  return { token, expiresAt: Instant.parse(expiresAt.toISOString()) }
}

/** The link with that token, not used up; null where there is none, or its time is over. */
export async function readLink(
  prisma: PrismaClient,
  purpose: Purpose,
  token: string,
): Promise<Link | null> {
  const where = openLink(purpose, token)
  return linkOf(await prisma.signInLink.findFirst({ where, select: COLUMNS }))
}

/** The link of a receipt, used or not: who received something may look at what they signed. */
export async function readReceiptLink(prisma: PrismaClient, token: string): Promise<Link | null> {
  const { usedAt: _, ...where } = openLink('receipt', token)
  return linkOf(await prisma.signInLink.findFirst({ where, select: COLUMNS }))
}

/** Takes the link, so that nobody can take it again: of two at once one gets it. */
export async function takeLink(
  prisma: PrismaClient,
  purpose: Purpose,
  token: string,
): Promise<Link | null> {
  const [taken] = await prisma.signInLink.updateManyAndReturn({
    where: openLink(purpose, token),
    data: { usedAt: new Date() },
    select: COLUMNS,
  })
  return linkOf(taken)
}

/** Takes back every open link to that entity: a newer one stands for it, or it is gone. */
export async function closeLinksTo(prisma: PrismaClient, entity: string): Promise<void> {
  await prisma.signInLink.updateMany({
    where: { entity, usedAt: null },
    data: { usedAt: new Date() },
  })
}

/** Takes back every open link of a person: they were removed, or set a password. */
export async function closeLinks(prisma: PrismaClient, person: PersonId): Promise<void> {
  const where = { person, usedAt: null }
  await prisma.signInLink.updateMany({ where, data: { usedAt: new Date() } })
}
