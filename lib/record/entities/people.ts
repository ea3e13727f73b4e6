import * as z from 'zod/mini'
import { BayId, MembershipId, ParticipantId, PartyId, PersonId, ProjectId, ShopId } from '../ids.ts'
import { Currency, Instant, Line, Minor, OptionalText, TaxRate, TimeZone } from '../scalars.ts'

/** One car's restoration. `standingConsent…` is what the owner allows in advance, tax included. */
export const Project = z.object({
  kind: z.literal('project'),
  id: ProjectId,
  name: Line,
  year: z.nullable(z.int()),
  description: OptionalText,
  currency: Currency,
  timeZone: TimeZone,
  standingConsentEach: z.nullable(Minor),
  standingConsentTotal: z.nullable(Minor),
  demo: z.boolean(),
  createdAt: Instant,
})
export type Project = Readonly<z.infer<typeof Project>>

/** What a party is in a project. */
export const PartyRole = z.enum(['owner', 'shop', 'supplier', 'observer'])
export type PartyRole = z.infer<typeof PartyRole>

/** Who takes part in a project. Exactly one shop is the lead; `bills` says who pays this party. */
export const Party = z.object({
  kind: z.literal('party'),
  id: PartyId,
  project: ProjectId,
  name: Line,
  role: PartyRole,
  lead: z.boolean(),
  shop: z.nullable(ShopId),
  bills: z.enum(['owner', 'lead']),
  leftAt: z.nullable(Instant),
})
export type Party = Readonly<z.infer<typeof Party>>

/** A person who acts for a party that is no shop here: the owner, a supplier, an observer. */
export const Participant = z.object({
  kind: z.literal('participant'),
  id: ParticipantId,
  project: ProjectId,
  party: PartyId,
  person: PersonId,
  since: Instant,
  removedAt: z.nullable(Instant),
})
export type Participant = Readonly<z.infer<typeof Participant>>

/** An independent firm. It has a record of its own, the shop book. */
export const Shop = z.object({
  kind: z.literal('shop'),
  id: ShopId,
  name: Line,
  currency: Currency,
  timeZone: TimeZone,
  taxRegistered: z.boolean(),
  taxRate: TaxRate,
  opensAt: z.string().check(z.regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time of day such as 08:00')),
  closesAt: z.string().check(z.regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time of day such as 18:00')),
  demo: z.boolean(),
  createdAt: Instant,
})
export type Shop = Readonly<z.infer<typeof Shop>>

/** What a person is in a shop. */
export const MembershipRole = z.enum(['manager', 'hand'])
export type MembershipRole = z.infer<typeof MembershipRole>

/** A person's role in a shop. A hand sees no money. */
export const Membership = z.object({
  kind: z.literal('membership'),
  id: MembershipId,
  shop: ShopId,
  person: PersonId,
  role: MembershipRole,
  since: Instant,
  removedAt: z.nullable(Instant),
})
export type Membership = Readonly<z.infer<typeof Membership>>

/** A place in a shop that holds one assembly at a time; `type` is booth, lift, bench, trim bay… */
export const Bay = z.object({
  kind: z.literal('bay'),
  id: BayId,
  shop: ShopId,
  name: Line,
  type: Line,
  retiredAt: z.nullable(Instant),
})
export type Bay = Readonly<z.infer<typeof Bay>>
