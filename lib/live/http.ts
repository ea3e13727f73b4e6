import { CODE_HEADER, PERSON_HEADER } from '../command/person-header.ts'
import type {
  Changed,
  CommandAnswer,
  CommandRequest,
  JournalPage,
  Me,
  ProjectView,
  ShopView,
} from '../command/wire.ts'
import type { DeviceNeeds } from '../record/device-needs.ts'
import type { PersonId } from '../record/ids.ts'
import type { Sender } from './outbox/sender-of.ts'

/** An answer with its status; 0 is no answer at all: no signal, or the server is away. */
export type Got<T> =
  | { readonly ok: true; readonly data: T }
  | { readonly ok: false; readonly status: number }

async function get<T>(path: string, read: (response: Response) => Promise<T>): Promise<Got<T>> {
  try {
    const response = await fetch(path, { cache: 'no-store' })
    if (!response.ok) return { ok: false, status: response.status }
    return { ok: true, data: await read(response) }
  } catch {
    return { ok: false, status: 0 }
  }
}

/** Who is signed in: a person or a shop's phone, nobody, or no answer came. */
export type Here =
  | { readonly is: 'somebody'; readonly sender: Sender }
  | { readonly is: 'nobody' | 'no answer' }

/** Asks who is signed in on this phone. */
export async function whoIsHere(): Promise<Here> {
  const got = await get('/api/me', async (response): Promise<Me> => response.json())
  if (got.ok) {
    const { device, person } = got.data
    return { is: 'somebody', sender: device?.id ?? person.id }
  }
  return { is: got.status === 401 ? 'nobody' : 'no answer' }
}

/** Whether the server can be reached, and serves. */
export const isServing = async (): Promise<boolean> =>
  (await get('/api/health', async () => null)).ok

/** Whether this phone's session was ended; false also where no answer came. */
export async function isSignedOut(): Promise<boolean> {
  const got = await get('/api/me', async () => null)
  return !got.ok && got.status === 401
}

/** The whole project as this view may see it. */
export const getProject = (id: string): Promise<Got<ProjectView>> =>
  get(`/api/projects/${id}`, async (response): Promise<ProjectView> => response.json())

/** The whole shop book. */
export const getShop = (id: string): Promise<Got<ShopView>> =>
  get(`/api/shops/${id}`, async (response): Promise<ShopView> => response.json())

/** A page of the journal, newest first; `query` has its filters. */
export const getJournal = (id: string, query: string): Promise<Got<JournalPage>> =>
  get(
    `/api/projects/${id}/journal?${query}`,
    async (response): Promise<JournalPage> => response.json(),
  )

/** What a record went through after that version. */
export const getChanges = (record: string, after: number, epoch: number): Promise<Got<Changed>> => {
  const kind = record.startsWith('prj_') ? 'projects' : 'shops'
  const path = `/api/${kind}/${record}/changes?after=${after}&epoch=${epoch}`
  return get(path, async (response): Promise<Changed> => response.json())
}

/**
 * What came of a command; 0 where no answer came, and nobody knows whether it was done; `soon` where the server is starting, and asks to
 * be asked again.
 */
export type Outcome = CommandAnswer | { readonly status: 0; readonly soon?: true }

/** One bar of signal may hold a request for ever: then it is tried again, with its key. In ms. */
const ANSWER_WITHIN_MS = 30_000

/** Sends a command as that person's press, and no other's; `code`: what they sign with on a shop's phone. The same key again gives the same answer. */
export async function postCommand(
  request: CommandRequest,
  person: PersonId | null,
  code: string | null = null,
): Promise<Outcome> {
  try {
    const response = await fetch('/api/commands', {
      method: 'POST',
      headers: {
        'content-type': 'application/json',
        ...(person === null ? {} : { [PERSON_HEADER]: person }),
        ...(code === null ? {} : { [CODE_HEADER]: code }),
      },
      body: JSON.stringify(request),
      signal: AbortSignal.timeout(ANSWER_WITHIN_MS),
    })
    if (response.status === 503 && response.headers.has('retry-after'))
      return { status: 0, soon: true }
    return outcomeOf(response.status, await response.json())
  } catch {
    return { status: 0 }
  }
}

/** Puts the status to the body: over the wire it stands in the head. */
function outcomeOf(
  status: number,
  body: {
    readonly changed?: readonly Changed[]
    readonly issues?: Extract<CommandAnswer, { readonly status: 400 }>['issues']
    readonly conditions?: Extract<CommandAnswer, { readonly status: 409 }>['conditions']
    readonly message?: string
    readonly needs?: DeviceNeeds
    readonly error?: { readonly message?: string }
  },
): Outcome {
  const message = body.message ?? body.error?.message ?? 'Nothing was changed.'
  switch (status) {
    case 200:
      return { status, changed: body.changed ?? [] }
    case 400:
      return { status, issues: body.issues ?? [], message }
    case 409:
      return { status, conditions: body.conditions ?? [], message }
    case 403:
      return { status, message, ...(body.needs !== undefined && { needs: body.needs }) }
    case 401:
    case 404:
    case 422:
    case 429:
      return { status, message }
    default:
      return { status: 503, message }
  }
}
