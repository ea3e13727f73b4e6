import type { DeviceId, PersonId, ShopId } from '../record/ids.ts'
import type { Instant } from '../record/scalars.ts'

/** `GET /api/device`: what the shop's phone on which this is asked has to know. */
export interface DeviceHere {
  readonly id: DeviceId
  readonly name: string
  readonly shop: ShopId
  readonly shopName: string
  /** Who can say that they work here now: the people of the shop's book. */
  readonly hands: readonly DeviceHand[]
  /** The demonstration's phone: leaving it ends nothing. */
  readonly demo: boolean
}

/** Somebody who works at a shop's phones. */
export interface DeviceHand {
  readonly person: PersonId
  readonly name: string
  /** They have a code of their own, to sign with. */
  readonly hasCode: boolean
}

/** `GET /api/shops/:id/devices`: a shop's phones, to its managers, and how its people stand with their codes. */
export interface ShopPhones {
  readonly devices: readonly {
    readonly id: DeviceId
    readonly name: string
    readonly addedBy: string
    readonly addedAt: Instant
    readonly lastSeenAt: Instant | null
    /** Brought in; else only named, and waits for its link to be opened on it. */
    readonly isIn: boolean
  }[]
  readonly hands: readonly (DeviceHand & {
    readonly setAt: Instant | null
    readonly onceUntil: Instant | null
  })[]
}

/** `POST /api/shops/:id/hands/:person/code`: shown to the manager once. */
export interface OnceCode {
  readonly once: string
  readonly until: Instant
}

/** `GET /api/phone-links/:token`: which phone a link makes of this one. */
export interface PhoneLink {
  readonly name: string
  readonly shopName: string
  readonly expiresAt: Instant
}

/** `GET /api/my-codes`: how it stands with my code in each shop that I work in. */
export type MyCodes = readonly {
  readonly shop: ShopId
  readonly shopName: string
  readonly setAt: Instant | null
  /** A manager took my code away since I set it. */
  readonly resetBy: string | null
  readonly resetAt: Instant | null
}[]
