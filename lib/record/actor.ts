import * as z from 'zod/mini'
import type { Party } from './entities/people.ts'
import { DeviceId, PartyId, PersonId, ShopId } from './ids.ts'
import type { ProjectRecord } from './project-record.ts'
import { Instant } from './scalars.ts'
import { all } from './table.ts'

/** In which role a person acts. A hand sees no money; a guest receives one handover by its link. */
export const Role = z.enum(['manager', 'hand', 'owner', 'supplier', 'observer', 'guest'])
export type Role = z.infer<typeof Role>

/** What one party sees in one role. */
export const View = z.object({ party: PartyId, role: Role })
export type View = Readonly<z.infer<typeof View>>

/** How a person last proved who they are. */
export const Proof = z.enum(['password', 'mailed code', 'demonstration'])
export type Proof = z.infer<typeof Proof>

/**
 * Who presses. In a project `party` is the one they act for; in a shop book it is null and `shop` counts.
 * `provedAt`: when they last proved who they are. `device`: the shop's phone that they press on, if it is one.
 */
export const Actor = z.object({
  person: PersonId,
  role: Role,
  party: z.nullable(PartyId),
  shop: z.nullable(ShopId),
  proof: z.nullable(Proof),
  provedAt: z.nullable(Instant),
  device: z.optional(DeviceId),
})
export type Actor = Readonly<z.infer<typeof Actor>>

/** The one lead shop of a project, or undefined while it has none. */
export const leadOf = (record: ProjectRecord): Party | undefined =>
  all(record.parties).find((party) => party.lead)

/** The owner of the car, or undefined while the project has none. */
export const ownerOf = (record: ProjectRecord): Party | undefined =>
  all(record.parties).find((party) => party.role === 'owner')

/** Does the work of a party: manager or hand of its shop, or the person of a party without a shop. */
export const actsFor = (actor: Actor, party: PartyId): boolean =>
  actor.party === party && actor.role !== 'observer' && actor.role !== 'guest'

/** Answers for a party: all who act for it but a shop's hands. */
export const managesFor = (actor: Actor, party: PartyId): boolean =>
  actsFor(actor, party) && actor.role !== 'hand'

/** Manages the lead shop of the project. */
export function managesLead(actor: Actor, record: ProjectRecord): boolean {
  const lead = leadOf(record)
  return lead !== undefined && managesFor(actor, lead.id)
}

/** Acts for `party`, or is the lead entering what that party told by telephone. */
export const actsForOrTold = (
  actor: Actor,
  record: ProjectRecord,
  party: PartyId,
  told: PartyId | undefined,
): boolean =>
  told === undefined ? actsFor(actor, party) : told === party && managesLead(actor, record)
