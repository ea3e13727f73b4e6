import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { CommandRequest, ProjectView, ShopView } from '../../command/wire.ts'
import type { Condition } from '../../record/condition.ts'
import type { DeviceNeeds } from '../../record/device-needs.ts'
import type { DeviceId, PersonId } from '../../record/ids.ts'
import type { InputIssue } from '../../record/input-issue.ts'
import type { Instant, Sha256 } from '../../record/scalars.ts'
import type { InputLine } from '../../words/press-line.ts'

/** A record as this person last saw it on this phone. */
export type KeptView = {
  readonly record: string
  readonly person: PersonId
  /** By the server's clock: the age that is shown. */
  readonly keptAt: Instant
  /** By how much the server's clock was ahead of this phone's, in ms: without a network it dates what is pressed. */
  readonly clockAhead: number
} & (
  | { readonly kind: 'project'; readonly view: ProjectView }
  | {
      readonly kind: 'shop'
      readonly view: ShopView
      /** Whose work stands on its day sheet; null where that was not opened yet. */
      readonly projects: readonly string[] | null
    }
)

/** A command that the server has not yet answered with a yes. */
export interface Unsent {
  /** Its place in the queue, given by the store; commands of one lane are sent in this order. */
  readonly place?: number
  readonly person: PersonId
  /** The shop's phone that it was pressed on, whoever of its hands did: it goes out as a press of that phone. */
  readonly device?: DeviceId
  /** What this hand must say before it goes, on a shop's phone: their own code. What was pressed after it waits behind it. */
  readonly needs?: DeviceNeeds
  /** To say who must sign in again, where their session has ended. */
  readonly personName: string
  /** The records that it changes: it waits for what was pressed before it in any of them. */
  readonly lanes: readonly string[]
  readonly request: CommandRequest
  /** When it was pressed, by the server's clock. */
  readonly pressedAt: Instant
  /** Files that it names, sent before it. */
  readonly files: readonly Sha256[]
  /** Where the press stands, to show its input again. */
  readonly path: string
  /** What it does and to what, and to whose car or in which shop, as a person says it. */
  readonly label: string
  readonly where: string
  /** What was typed or chosen, in the words and the money of its project. */
  readonly entered: readonly InputLine[]
  /** Null while it waits; what the server said where it said no. The input is kept until it is sent again or dropped. */
  readonly no: UnsentNo | null
}

/** Why a command that arrived was not carried out. */
export interface UnsentNo {
  readonly status: number
  readonly message: string
  readonly conditions: readonly Condition[]
  readonly issues: readonly InputIssue[]
  readonly at: Instant
}

/** A photo or a paper that was chosen on this phone, until the server has its bytes and the press that names it is done. */
export interface WaitingFile {
  /** Its address on the server, `folder/sha256`: equal bytes may go to two projects. */
  readonly address: string
  readonly sha256: Sha256
  /** Where it belongs: `/api/projects/prj_…/files`, or a receipt's folder. */
  readonly folder: string
  /** Who chose it; null for a guest without an account. */
  readonly person: PersonId | null
  readonly name: string
  /** Null once the server has them. */
  readonly bytes: Blob | null
  /** A small picture of it; null of a paper. */
  readonly thumb: Blob | null
  /** The field it was chosen in, until the press that names it is done. */
  readonly use: string | null
  readonly addedAt: Instant
  /** Where the upload goes on after a lost network, once it has begun. */
  readonly upload: string | null
  /** What the server said where it won't have it. */
  readonly no: string | null
}

interface Stores extends DBSchema {
  views: { key: string; value: KeptView; indexes: { lately: [person: string, keptAt: string] } }
  unsent: { key: number; value: Unsent }
  files: { key: string; value: WaitingFile }
}

/** What this phone keeps between visits: what was seen, what is unsent, photos on their way. */
export type PhoneStore = IDBPDatabase<Stores>

const NAME = 'fettleyard'
const VERSION = 1

/**
 * Opens the phone's store; the same in a tab and in the service worker. It lets go of it as soon as a newer program wants the next
 * version: what this one presses from then on goes as it is made, or not at all.
 * @throws where the browser keeps nothing, as in some private windows, or where a newer program has the store
 */
export async function openPhoneStore(): Promise<PhoneStore> {
  const phone: PhoneStore = await openDB<Stores>(NAME, VERSION, {
    upgrade(db) {
      db.createObjectStore('views', { keyPath: 'record' }).createIndex('lately', [
        'person',
        'keptAt',
      ])
      db.createObjectStore('unsent', { keyPath: 'place', autoIncrement: true })
      db.createObjectStore('files', { keyPath: 'address' })
    },
    // A tab that nobody closes would else keep every other from opening it.
    blocking: () => phone.close(),
  })
  return phone
}
