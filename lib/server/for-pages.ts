import type { JournalPage, Me, ProjectView, ShopView } from '../command/wire.ts'
import type {
  AsOf,
  DaySheetSource,
  Installation,
  Joining,
  Receipt,
} from '../command/wire-access.ts'
import type { PhoneLink } from '../command/wire-device.ts'
import type { Proof } from '../record/actor.ts'
import type { PersonId } from '../record/ids.ts'
import type { Instant } from '../record/scalars.ts'

/** Who signed in, and how they proved it. */
export type SignedIn = {
  readonly person: PersonId
  readonly name: string
  readonly proof: Proof
  readonly provedAt: Instant
}

/** Which entries of the journal: newest first, those before `before`. */
export type JournalFilter = {
  readonly before?: number | undefined
  readonly person?: string | undefined
  readonly command?: string | undefined
  readonly entity?: string | undefined
  readonly limit?: number | undefined
}

/**
 * What a page is made of and does not carry: some hundred kB that the first paint needn't wait for. The server has it aside under
 * the ticket while it makes the page; the phone fetches it by its path.
 */
export type Late = { readonly ticket: string; readonly path: string }

/**
 * What the running server offers to the pages. Next bundles its own copy of every module, so pages reach pools, lanes
 * and sockets only through these functions, which the server put on `globalThis`. Import nothing but types here.
 * `cookie` is the request's header; null answers mean: not signed in, not there, or not for this person.
 */
export type ForPages = {
  readonly version: string
  /** Whether the page of all parts of the look is shown. */
  readonly partsPage: boolean
  /** For next-auth's route: how its cookies are made. */
  readonly auth: {
    readonly secret: string
    readonly secure: boolean
    readonly maxAgeSeconds: number
    /** Any wrong pair gives null, after the same time. `address` is where the request came from. @throws where tried too often */
    readonly byPassword: (
      email: string,
      password: string,
      address: string,
    ) => Promise<SignedIn | null>
    readonly byLink: (token: string, address: string) => Promise<SignedIn | null>
    readonly asDemo: (person: string) => Promise<SignedIn | null>
  }
  readonly installation: () => Promise<Installation>
  /** The demonstration, while it is there; `doors`: one press signs in as anybody of it. */
  readonly demonstration: () => Promise<{ readonly doors: boolean } | null>
  readonly me: (cookie: string | null) => Promise<Me | null>
  readonly project: (cookie: string | null, project: string) => Promise<Late | null>
  readonly shop: (cookie: string | null, shop: string) => Promise<Late | null>
  readonly daySheet: (cookie: string | null, shop: string) => Promise<Late | null>
  /** By ticket, while its page is being made. */
  readonly aside: {
    readonly project: (ticket: string) => ProjectView | undefined
    readonly shop: (ticket: string) => ShopView | undefined
    readonly daySheet: (ticket: string) => DaySheetSource | undefined
  }
  readonly journal: (
    cookie: string | null,
    project: string,
    filter: JournalFilter,
  ) => Promise<JournalPage | null>
  readonly asOf: (cookie: string | null, project: string, at: string) => Promise<AsOf | null>
  readonly joining: (token: string) => Promise<Joining | null>
  /** Which phone a link makes of the one that opens it. */
  readonly phoneLink: (token: string) => Promise<PhoneLink | null>
  readonly receipt: (token: string) => Promise<Receipt | null>
}

declare global {
  // `var` is what makes it a property of globalThis.
  var fettleyard: ForPages | undefined
}

/** Called once by the server, before the first page is served. */
export function provideForPages(functions: ForPages): void {
  globalThis.fettleyard = functions
}

/** The running server's functions. */
export function forPages(): ForPages {
  const functions = globalThis.fettleyard
  if (functions === undefined) throw new Error('Pages are served by lib/server/main.ts only.')
  return functions
}
