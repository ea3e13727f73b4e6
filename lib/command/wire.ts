import type { View } from '../record/actor.ts'
import type { CommandName } from '../record/command-names.ts'
import type { Condition, Json } from '../record/condition.ts'
import type { DeviceNeeds } from '../record/device-needs.ts'
import type { Bay, MembershipRole, PartyRole, Shop } from '../record/entities/people.ts'
import type { Entity, Stub } from '../record/entity.ts'
import type { DeviceId, PartyId, PersonId, ProjectId, ShopId } from '../record/ids.ts'
import type { InputIssue } from '../record/input-issue.ts'
import type { Instant } from '../record/scalars.ts'

/** Body of `POST /api/commands`. `expected`: the version of each record that the person was looking at. */
export interface CommandRequest {
  readonly name: CommandName
  readonly input: Json
  readonly key: string
  readonly happenedAt: string
  readonly expected?: { readonly [record: string]: number }
}

/** Who did what, in few words, with a live change or an answer. */
export interface Doing {
  readonly person: PersonId
  readonly party: PartyId | null
  readonly command: CommandName
  readonly at: Instant
}

/** Names of persons by id, as far as they stand in what is sent. Kept outside the records. */
export type People = { readonly [person: string]: string }

/** A record moved from one version to another, as one view may see it. */
export interface Changed {
  readonly record: ProjectId | ShopId
  readonly from: number
  readonly to: number
  /** Raised by a grant or a removal: what was fetched under another epoch is to be fetched anew. */
  readonly epoch: number
  readonly entities: readonly Entity[]
  readonly stubs: readonly Stub[]
  readonly people: People
  readonly doings: readonly Doing[]
}

/** Answers of `POST /api/commands`, by HTTP status. */
export type CommandAnswer =
  | { readonly status: 200; readonly changed: readonly Changed[] }
  | { readonly status: 400; readonly issues: readonly InputIssue[]; readonly message: string }
  | { readonly status: 401 | 404 | 422 | 429 | 503; readonly message: string }
  /** `needs`: what a shop's phone must ask first. Nothing was decided: sent again with it, the same press goes its way. */
  | { readonly status: 403; readonly message: string; readonly needs?: DeviceNeeds }
  | { readonly status: 409; readonly conditions: readonly Condition[]; readonly message: string }

/** `GET /api/projects/:id`: the record as this view may see it. */
export interface ProjectView {
  readonly record: ProjectId
  readonly view: View
  readonly person: PersonId
  readonly version: number
  readonly epoch: number
  /** The server's clock when this was made. */
  readonly now: Instant
  readonly entities: readonly Entity[]
  readonly stubs: readonly Stub[]
  /** At which version each entity last changed. */
  readonly versions: { readonly [entity: string]: number }
  readonly people: People
  /** The shops that take part, and their bays, so that slots can be named and claimed. */
  readonly shops: readonly Shop[]
  readonly bays: readonly Bay[]
  /** People of those shops and the party that each acts for by its book; to managers, who may name them. */
  readonly members: readonly { readonly person: PersonId; readonly party: PartyId }[]
}

/** `GET /api/shops/:id`: the shop book as this role may see it; another project's slots at its bays are complete, they are its own. */
export interface ShopView {
  readonly record: ShopId
  readonly role: MembershipRole
  readonly person: PersonId
  readonly version: number
  readonly epoch: number
  readonly now: Instant
  readonly entities: readonly Entity[]
  readonly people: People
  /** Projects this shop takes part in, so that slots can be named. */
  readonly projects: readonly {
    readonly id: ProjectId
    readonly name: string
    readonly assemblies: { readonly [assembly: string]: string }
  }[]
}

/** `GET /api/me`: who is signed in and where they belong. */
export interface Me {
  readonly person: { readonly id: PersonId; readonly name: string; readonly email: string }
  readonly shops: readonly {
    readonly id: ShopId
    readonly name: string
    readonly role: MembershipRole
  }[]
  readonly projects: readonly {
    readonly id: ProjectId
    readonly name: string
    readonly party: PartyId
    readonly partyName: string
    readonly partyRole: PartyRole
    readonly lead: boolean
  }[]
  /** Proof of who they are is fresh until then; null where they must prove it again before a yes. */
  readonly provedUntil: Instant | null
  readonly demo: boolean
  /** A shop's phone, on which nobody is signed in as themselves: `person` is then NOBODY, under the phone's name. */
  readonly device: { readonly id: DeviceId; readonly name: string; readonly shop: ShopId } | null
}

/** `GET /api/projects/:id/journal?before=&person=&command=&entity=&limit=`: newest first. */
export interface JournalPage {
  readonly entries: readonly {
    readonly sequence: number
    readonly at: Instant
    readonly happenedAt: Instant
    readonly person: PersonId
    readonly party: PartyId | null
    readonly role: string
    readonly command: CommandName
    /** Name of the shop's phone that it came through; null where somebody was signed in as themselves. */
    readonly device: string | null
    /** Of the entities it changed, those that this view may see, as they were after it. */
    readonly entities: readonly Entity[]
    /** Parts of the entry that this view may not see, by scope. */
    readonly hiddenParts: readonly string[]
    readonly hash: string
  }[]
  readonly people: People
  /** Pass as `before` for the next page; null at the end. */
  readonly next: number | null
}

/** What the server tells a phone over the socket. */
export interface ServerEvents {
  changed: (changed: Changed) => void
  /** This person's grant was taken away or raised: fetch `me` and the record again. */
  access: (what: { readonly record: string }) => void
  /** The record's version, every 15 s, so that a lost message is noticed. */
  version: (what: { readonly record: string; readonly version: number }) => void
}
/** What a phone asks of the server over the socket. */
export interface ClientEvents {
  /** Follow a project or a shop book; answers its version, or null where this person may not. */
  watch: (record: string, answer: (version: number | null) => void) => void
  unwatch: (record: string) => void
}
