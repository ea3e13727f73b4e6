import type { Me } from '../../command/wire.ts'
import { PROOF_FRESH_MINUTES } from '../../record/fresh-proof.ts'
import { Instant } from '../../record/scalars.ts'
import { all } from '../../record/table.ts'
import type { PrismaClient } from '../generated/client.ts'
import type { Looker } from '../lane/actor.ts'
import type { Reading } from '../views/reading.ts'
import { accountById } from './accounts.ts'
import type { OnPhone } from './looker.ts'
import type { Session } from './session.ts'

const PROOF_MS = PROOF_FRESH_MINUTES * 60_000

/** Who is signed in and where they belong; null where their account is gone. Of a shop's phone: what it is, and its shop's places. */
export async function meOf(
  prisma: PrismaClient,
  reading: Reading,
  session: Session | OnPhone,
): Promise<Me | null> {
  const shops = await shopsOf(reading, session)
  const projects = await projectsOf(reading, session)
  if ('phone' in session) {
    const { id, name, shop, demo } = session.phone
    const person = { id: session.person, name, email: '' }
    return { person, shops, projects, provedUntil: null, demo, device: { id, name, shop } }
  }
  const { person } = session
  const account = await accountById(prisma, person)
  if (account === null) return null
  const provedUntil = Date.parse(session.provedAt) + PROOF_MS
  const fresh = provedUntil > Date.now()
  return {
    person: { id: person, name: account.name, email: account.email },
    shops,
    projects,
    provedUntil: fresh ? Instant.parse(new Date(provedUntil).toISOString()) : null,
    demo: account.demo,
    device: null,
  }
}

async function shopsOf(reading: Reading, who: Looker): Promise<Me['shops']> {
  const found: Me['shops'][number][] = []
  for (const [id, role] of await reading.shopsOf(who)) {
    const name = (await reading.shop(id))?.shops.rows.get(id)?.name
    if (name !== undefined) found.push({ id, name, role })
  }
  return found
}

async function projectsOf(reading: Reading, who: Looker): Promise<Me['projects']> {
  const found: Me['projects'][number][] = []
  for (const id of await reading.projectsOf(who)) {
    const record = await reading.project(id)
    const view = record === null ? null : await reading.viewOf(who, record)
    if (record === null || view === null) continue
    const party = record.parties.rows.get(view.party)
    if (party === undefined) continue
    const name = all(record.projects)[0]?.name ?? ''
    const { name: partyName, role: partyRole, lead } = party
    found.push({ id, name, party: party.id, partyName, partyRole, lead })
  }
  return found
}
