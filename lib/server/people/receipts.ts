import { createHash } from 'node:crypto'
import type { HandedLink, Receipt } from '../../command/wire-access.ts'
import { actsFor, leadOf } from '../../record/actor.ts'
import type { Json } from '../../record/condition.ts'
import type { Handover } from '../../record/entities/things.ts'
import { HandoverId, type PartyId, PersonId, ProjectId } from '../../record/ids.ts'
import type { ProjectRecord } from '../../record/project-record.ts'
import type { Sha256 } from '../../record/scalars.ts'
import type { Files, KeptFile } from '../files.ts'
import type { PrismaClient } from '../generated/client.ts'
import type { Looker } from '../lane/actor.ts'
import type { Enter } from '../lane/enter.ts'
import type { Outcome } from '../lane/outcome.ts'
import { handedLink } from '../mail.ts'
import type { Reading } from '../views/reading.ts'
import { addLink, type Link, readLink, readReceiptLink, takeLink } from './links.ts'

/** Receiving by link or QR code, without an account. */
export type Receipts = {
  /** A link to one handover, made by who releases it or by the lead; null where this person may not, or it is none. */
  readonly link: (who: Looker, handover: string) => Promise<HandedLink | null>
  readonly read: (token: string) => Promise<Receipt | null>
  /** Receives with what the guest said; null where the link is none, or no more. */
  readonly receive: (
    token: string,
    said: { readonly [key: string]: Json },
  ) => Promise<Outcome | null>
  /** A photo of this handover; null where the link is none, or the file no part of it. */
  readonly readFile: (token: string, sha256: Sha256) => Promise<KeptFile | null>
  /** Where a guest's photo goes, kept in the name of who handed the link over; null where the link is none, or no more. */
  readonly keeping: (
    token: string,
  ) => Promise<{ readonly link: string; readonly project: ProjectId; readonly by: PersonId } | null>
}

interface Found {
  readonly link: Link
  readonly record: ProjectRecord
  readonly handover: Handover
}

/** Receipts by links under `origin`. */
export function openReceipts(
  prisma: PrismaClient,
  enter: Enter,
  reading: Reading,
  files: Files,
  origin: string,
): Receipts {
  async function find(link: Link | null): Promise<Found | null> {
    const project = ProjectId.safeParse(link?.record)
    const record = project.success ? await reading.project(project.data) : null
    const handover = record?.handovers.rows.get(link?.entity ?? '')
    if (link === null || record === null || handover === undefined) return null
    return { link, record, handover }
  }

  return {
    async link(who, id) {
      const handover = HandoverId.safeParse(id)
      if (!handover.success) return null
      const where = { id: handover.data }
      const row = await prisma.handover.findUnique({ where, select: { project: true } })
      const project = ProjectId.safeParse(row?.project)
      const record = project.success ? await reading.project(project.data) : null
      const there = record?.handovers.rows.get(handover.data)
      if (record === null || there === undefined) return null
      if (!(await mayHandOver(reading, who, record, there.from))) return null
      const to = { person: who.person, record: record.id, entity: there.id }
      const { token, expiresAt } = await addLink(prisma, 'receipt', to)
      return handedLink(`${origin}/receipt/${token}`, expiresAt, false)
    },
    async read(token) {
      const found = await find(await readReceiptLink(prisma, token))
      return found === null ? null : receiptOf(found)
    },
    async receive(token, said) {
      const found = await find(await readLink(prisma, 'receipt', token))
      if (found === null) return null
      const who = { person: guestOf(found.link), proof: null, provedAt: null }
      const outcome = await enter({
        who,
        as: { ...who, role: 'guest', party: found.handover.to, shop: null },
        name: 'handover.receive',
        // What a guest sends may name anything.
        record: found.record.id,
        input: { ...said, handover: found.handover.id },
      })
      if (outcome.is === 'done') await takeLink(prisma, 'receipt', token)
      return outcome
    },
    async readFile(token, sha256) {
      const found = await find(await readReceiptLink(prisma, token))
      if (found === null) return null
      const { files: released, receivedFiles } = found.handover
      return [...released, ...receivedFiles].includes(sha256)
        ? files.read(found.record.id, sha256)
        : null
    },
    async keeping(token) {
      const found = await find(await readLink(prisma, 'receipt', token))
      const by = found?.link.person
      return found === null || !by ? null : { link: found.link.id, project: found.record.id, by }
    },
  }
}

/** Whoever acts for the releasing party or for the lead may hand the link over. */
async function mayHandOver(
  reading: Reading,
  who: Looker,
  record: ProjectRecord,
  from: PartyId,
): Promise<boolean> {
  const view = await reading.viewOf(who, record)
  if (view === null) return false
  const actor = { ...view, person: who.person, shop: null, proof: null, provedAt: null }
  const lead = leadOf(record)
  return actsFor(actor, from) || (lead !== undefined && actsFor(actor, lead.id))
}

/** A guest has no account; the journal knows them by their link. What they wrote and signed is in the handover. */
const guestOf = ({ id }: Link): PersonId =>
  PersonId.parse(`psn_guest${createHash('sha256').update(id).digest('hex').slice(0, 32)}`)

/** What a guest sees: this handover, and the names that stand in it. */
function receiptOf({ link, record, handover }: Found): Receipt {
  const project = record.projects.rows.get(record.id)
  const nameOf = (party: PartyId) => record.parties.rows.get(party)?.name ?? ''
  return {
    handover,
    project: project?.name ?? '',
    timeZone: project?.timeZone ?? 'UTC',
    from: nameOf(handover.from),
    to: nameOf(handover.to),
    assemblies: handover.assemblies.flatMap((id) => {
      const assembly = record.assemblies.rows.get(id)
      return assembly === undefined ? [] : [{ id, name: assembly.name, pieces: assembly.pieces }]
    }),
    expiresAt: link.expiresAt,
  }
}
