import type { MembershipRole, PartyRole } from '../record/entities/people.ts'
import type { Handover } from '../record/entities/things.ts'
import type { AssemblyId, DeviceId, PersonId, ProjectId, ShopId } from '../record/ids.ts'
import type { Instant } from '../record/scalars.ts'
import type { ProjectView, ShopView } from './wire.ts'

/** `GET /api/installation`: what a visitor who isn't signed in may know. */
export interface Installation {
  /** Nobody has set it up: show the set-up page. */
  readonly empty: boolean
  /** The demonstration can be loaded now. */
  readonly demoOffered: boolean
  /** Whom one press signs in as; none where there is no demonstration, or where others can reach the server. */
  readonly demoPersons: readonly {
    readonly id: PersonId
    readonly name: string
    /** What they are: `manager of Tarn Lane Coachworks`. */
    readonly at: string
    readonly role: MembershipRole | PartyRole
  }[]
  /** The demonstration's phone of a shop, and what its hands sign with; null where those doors are shut. */
  readonly demoPhone: {
    readonly id: DeviceId
    readonly name: string
    readonly shop: ShopId
    readonly shopName: string
    readonly hands: readonly { readonly name: string; readonly code: string }[]
  } | null
  /** Mails can be sent, so a sign-in link can be asked for. */
  readonly mail: boolean
}

/** Body of `POST /api/installation/shop`. Answers `Me`, signed in. */
export interface FirstShop {
  readonly shop: string
  readonly currency: string
  readonly timeZone: string
  readonly taxRegistered: boolean
  /** Hundredths of a per cent: 2000 is 20 %. */
  readonly taxRate: number
  readonly name: string
  readonly email: string
  readonly password: string
}

/** `GET /api/installation/demo`, while it loads and after. */
export interface DemoProgress {
  readonly state: 'none' | 'loading' | 'loaded' | 'failed'
  readonly done: number
  readonly total: number
  readonly message: string | null
}

/** A link to hand over, as an address and as a QR code (SVG text); `mailed` where one goes by mail as well. */
export interface HandedLink {
  readonly url: string
  readonly qr: string
  readonly mailed: boolean
  readonly expiresAt: Instant
}

/** `GET /api/join/:token`: to what this invitation leads. Its `POST` takes `{password}` and answers `Me`, signed in. */
export interface Joining {
  readonly name: string
  readonly email: string
  /** The shop, or the party and its project. */
  readonly to: string
  readonly expiresAt: Instant
}

/** `GET /api/receipts/:token`: one handover, for somebody without an account. Its `POST` takes the rest of handover.receive. */
export interface Receipt {
  readonly handover: Handover
  readonly project: string
  readonly timeZone: string
  readonly from: string
  readonly to: string
  readonly assemblies: readonly {
    readonly id: string
    readonly name: string
    readonly pieces: number
  }[]
  readonly expiresAt: Instant
}

/** `GET /api/shops/:id/day-sheet`: the shop's book and its projects as its people see them; lib/gate makes the sheet of it. */
export interface DaySheetSource {
  readonly shop: ShopView
  readonly projects: readonly ProjectView[]
}

/** `GET /api/projects/:id/as-of?at=`: the record as it stood then, as this view may see it. */
export interface AsOf {
  readonly at: Instant
  readonly view: ProjectView
}

/** What was wrong, and the field it is about. */
export interface Fault {
  readonly error: { readonly field: string; readonly message: string }
}

/** `GET /api/tags/:code`: where the assembly with that tag stands. */
export interface TagFound {
  readonly project: ProjectId
  readonly assembly: AssemblyId
}
