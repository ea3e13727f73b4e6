import * as z from 'zod/mini'
import type { HandedLink, Joining } from '../../command/wire-access.ts'
import { leadOf } from '../../record/actor.ts'
import { MembershipRole, type Party } from '../../record/entities/people.ts'
import { PartyId, type PersonId, ProjectId, ShopId } from '../../record/ids.ts'
import { Line } from '../../record/scalars.ts'
import type { PrismaClient } from '../generated/client.ts'
import { Email } from '../installation/installation.ts'
import type { Jobs } from '../jobs.ts'
import type { Enter } from '../lane/enter.ts'
import type { Outcome } from '../lane/outcome.ts'
import { handedLink } from '../mail.ts'
import type { Job } from '../save.ts'
import type { Reading } from '../views/reading.ts'
import {
  type Account,
  accountByEmail,
  accountById,
  addAccount,
  dropAccount,
  setPassword,
} from './accounts.ts'
import { addLink, closeLinks, type Link, readLink, takeLink } from './links.ts'
import { mailJob } from './mails.ts'
import { hashPassword, isPassword } from './password.ts'
import type { Limits } from './rate-limit.ts'
import type { Session } from './session.ts'

const who = { name: Line, email: Email }
/** Body of `POST /api/invitations`. */
export const InviteInput = z.union([
  z.strictObject({ ...who, shop: ShopId, role: MembershipRole }),
  z.strictObject({ ...who, project: ProjectId, party: PartyId }),
])
export type InviteInput = z.infer<typeof InviteInput>

/** What came of an invitation: the link to hand over, or why not. */
export type Invited =
  | { readonly is: 'invited'; readonly link: HandedLink }
  /** The same address waits for another firm's invitation: a second link would open what the first one guards. */
  | { readonly is: 'waiting elsewhere' }
  | { readonly is: 'not done'; readonly outcome: Exclude<Outcome, { readonly is: 'done' }> }

/** Letting people in, and coming in by a link. */
export type Invitations = {
  /** Lets somebody in, as `session`'s person may; again for somebody already in gives a new link. */
  readonly invite: (session: Session, input: InviteInput) => Promise<Invited>
  readonly read: (token: string) => Promise<Joining | null>
  /**
   * Uses the link up: whoever has no password yet sets it, whoever has one gives it, so that the link alone opens no account
   * that was there before. @throws {TooOften}
   */
  readonly take: (
    token: string,
    password: string,
    address: string,
  ) => Promise<Account | 'no link' | 'wrong password'>
}

/** Invitations into the records that `reading` reads, by links under `origin`. */
export function openInvitations(
  prisma: PrismaClient,
  enter: Enter,
  reading: Reading,
  jobs: Jobs | null,
  limits: Limits,
  origin: string,
): Invitations {
  async function invite(session: Session, asked: InviteInput): Promise<Invited> {
    const known = await accountByEmail(prisma, asked.email)
    const input = await inPlace(asked)
    const record = 'shop' in input ? input.shop : input.project
    if (known?.demo === true) return { is: 'waiting elsewhere' }
    if (known?.passwordHash === null && (await belongsElsewhere(prisma, known.id, record)))
      return { is: 'waiting elsewhere' }
    const { name, email } = input
    const account = known ?? (await addAccount(prisma, { name, email, passwordHash: null }))
    const answer = await letIn(session, input, account)
    // Another shop's book is none of the lead's: what is hidden there is no more than forbidden here.
    const outcome: Outcome =
      answer.is === 'missing' && 'project' in asked && 'shop' in input
        ? { is: 'forbidden' }
        : answer
    if (outcome.is === 'done') jobs?.look()
    else if (isAlreadyIn(outcome))
      for (const job of mailTo(account.id, record)) await jobs?.add(job)
    const isIn =
      outcome.is === 'done' ||
      isAlreadyIn(outcome) ||
      (outcome.is === 'forbidden' && known !== null && (await isAwaited(session, asked, known.id)))
    if (isIn) return { is: 'invited', link: await linkFor(account, record) }
    if (known === null) await dropAccount(prisma, account.id)
    return { is: 'not done', outcome }
  }

  /** Whether the lead asks for a person whom it made the manager of a shop's new book, while nobody of that shop has come in. */
  async function isAwaited(session: Session, asked: InviteInput, person: PersonId) {
    if ('shop' in asked) return false
    const record = await reading.project(asked.project)
    const shop = record?.parties.rows.get(asked.party)?.shop ?? null
    if (record === null || shop === null) return false
    const view = await reading.viewOf(session, record)
    if (view?.party !== leadOf(record)?.id || view?.role !== 'manager') return false
    const members = await prisma.membership.findMany({
      where: { shop, removedAt: null },
      select: { person: true },
    })
    const people = members.map((member) => member.person)
    const here = { id: { in: people }, passwordHash: { not: null } }
    return people.includes(person) && (await prisma.person.count({ where: here })) === 0
  }

  /** The invitation goes by mail as well, where mail goes. */
  const mailTo = (person: PersonId, record: ShopId | ProjectId): readonly Job[] =>
    jobs === null ? [] : [mailJob({ type: 'invitation', person, record })]

  /** A party that is a shop with a book lets people in by that book. */
  async function inPlace(input: InviteInput): Promise<InviteInput> {
    if ('shop' in input) return input
    const party = (await reading.project(input.project))?.parties.rows.get(input.party)
    if (party === undefined || party.shop === null) return input
    return { name: input.name, email: input.email, shop: party.shop, role: 'manager' }
  }

  async function letIn(session: Session, input: InviteInput, { id }: Account): Promise<Outcome> {
    if ('shop' in input) {
      const { shop, role } = input
      const command = { name: 'membership.add', input: { person: id, role } } as const
      return enter({ who: session, record: shop, jobs: mailTo(id, shop), ...command })
    }
    const party = (await reading.project(input.project))?.parties.rows.get(input.party)
    if (party?.role === 'shop') return openBook(session, input.project, party, id)
    return enter({
      who: session,
      name: 'participant.add',
      input: { party: input.party, person: id },
      jobs: mailTo(id, input.project),
    })
  }

  /** A shop that the lead entered for by telephone gets its book, managed by whom the lead invites. */
  async function openBook(
    session: Session,
    project: ProjectId,
    party: Party,
    person: PersonId,
  ): Promise<Outcome> {
    const record = await reading.project(project)
    const view = record === null ? null : await reading.viewOf(session, record)
    if (record === null || view?.party !== leadOf(record)?.id || view?.role !== 'manager')
      return { is: 'forbidden' }
    const car = record.projects.rows.get(project)
    if (car === undefined) return { is: 'missing', entity: project }
    const { currency, timeZone } = car
    const who = { person, proof: null, provedAt: null }
    const made = await enter({
      who,
      as: { ...who, role: 'manager', party: null, shop: null },
      name: 'shop.create',
      input: { name: party.name, currency, timeZone, taxRegistered: false, taxRate: 0 },
    })
    const shop = made.is === 'done' ? made.moves[0]?.move.record.id : undefined
    if (shop === undefined) return made
    return enter({
      who: session,
      name: 'party.describe',
      input: { party: party.id, shop },
      jobs: mailTo(person, project),
    })
  }

  async function find(
    token: string,
  ): Promise<{ readonly link: Link; readonly account: Account } | null> {
    const link = await readLink(prisma, 'invitation', token)
    const account = link?.person ? await accountById(prisma, link.person) : null
    return link === null || account === null || account.demo ? null : { link, account }
  }

  async function linkFor(account: Account, record: ShopId | ProjectId): Promise<HandedLink> {
    const { token, expiresAt } = await addLink(prisma, 'invitation', { person: account.id, record })
    return handedLink(`${origin}/join/${token}`, expiresAt, jobs !== null)
  }

  return {
    invite,
    async read(token) {
      const found = await find(token)
      if (found === null) return null
      const { name, email } = found.account
      const to = await placeOf(reading, found.link.record)
      return { name, email, to, expiresAt: found.link.expiresAt }
    },
    async take(token, password, address) {
      const found = await find(token)
      if (found === null) return 'no link'
      const { account } = found
      if (account.passwordHash !== null) {
        await limits.signIn(account.email, address)
        if (!(await isPassword(account.passwordHash, password))) return 'wrong password'
        return (await takeLink(prisma, 'invitation', token)) === null ? 'no link' : account
      }
      const passwordHash = await hashPassword(password)
      if ((await takeLink(prisma, 'invitation', token)) === null) return 'no link'
      await setPassword(prisma, account.id, passwordHash)
      await closeLinks(prisma, account.id)
      return { ...account, passwordHash }
    },
  }
}

/** The only no that a second invitation may meet: they are in already, and only lost their link. */
const isAlreadyIn = (outcome: Outcome): boolean =>
  outcome.is === 'refused' && outcome.conditions.every(({ rule }) => rule === 'exists')

/** Whether a person was let in somewhere else than into this record. */
async function belongsElsewhere(
  prisma: PrismaClient,
  person: PersonId,
  record: string,
): Promise<boolean> {
  const works = { person, shop: { not: record }, removedAt: null }
  const takesPart = { person, project: { not: record }, removedAt: null }
  return (
    (await prisma.membership.findFirst({ where: works, select: { id: true } })) !== null ||
    (await prisma.participant.findFirst({ where: takesPart, select: { id: true } })) !== null
  )
}

/** The shop's name, or the car's. */
async function placeOf(reading: Reading, record: string | null): Promise<string> {
  const shop = ShopId.safeParse(record)
  if (shop.success) return (await reading.shop(shop.data))?.shops.rows.get(shop.data)?.name ?? ''
  const project = ProjectId.safeParse(record)
  if (!project.success) return ''
  return (await reading.project(project.data))?.projects.rows.get(project.data)?.name ?? ''
}
