import { decode, encode } from 'next-auth/jwt'
import * as z from 'zod/mini'
import { Proof } from '../../record/actor.ts'
import { PersonId } from '../../record/ids.ts'
import { Instant } from '../../record/scalars.ts'
import type { Queryable } from '../load.ts'

/** A session lasts this long without being used, in seconds. */
export const SESSION_SECONDS = 30 * 24 * 3600
/** How old the stamp of a sign-out may be before it is read again, in ms. */
const STAMP_MS = 1000
/** Cookies whose token is kept decoded: a decode costs 0.3 ms. */
const DECODED_MOST = 5000

/** Who is signed in, since when, and how they last proved who they are. */
export const Session = z.object({
  person: PersonId,
  issuedAt: Instant,
  proof: Proof,
  provedAt: Instant,
})
export type Session = Readonly<z.infer<typeof Session>>

/** Reads and makes session cookies, in next-auth's form. */
export type Sessions = {
  /** Who sent this `Cookie` header; null where nobody is signed in, or no longer. */
  readonly of: (cookie: string | null | undefined) => Promise<Session | null>
  /** A `Set-Cookie` header for a session. */
  readonly cookieFor: (session: Session) => Promise<string>
  /** A `Set-Cookie` header that takes it away. */
  readonly noCookie: () => string
  /** Ends every session of a person that was issued until now, on every node within a second. */
  readonly end: (person: PersonId) => Promise<void>
  /** Whether a session is still good, as `of` tells; for sockets, which show their cookie only once. */
  readonly isGood: (session: Session) => Promise<boolean>
}

/** The cookie's name under http and under https. */
export const sessionCookieName = (secure: boolean): string =>
  `${secure ? '__Secure-' : ''}next-auth.session-token`

/** Sessions that `secret` signs; `secure` where people reach us by https. */
export function openSessions(db: Queryable, secret: string, secure: boolean): Sessions {
  const name = sessionCookieName(secure)
  const decoded = new Map<string, { readonly session: Session; readonly untilMs: number }>()
  const stamps = new Map<string, { readonly readMs: number; readonly at: Promise<number> }>()

  async function decodeOnce(token: string): Promise<Session | null> {
    const known = decoded.get(token)
    if (known !== undefined) return known.untilMs > Date.now() ? known.session : null
    const payload = await decode({ token, secret }).catch(() => null)
    const session = Session.safeParse({ ...payload, person: payload?.sub })
    if (!session.success) return null
    if (decoded.size >= DECODED_MOST) decoded.delete(decoded.keys().next().value ?? '')
    decoded.set(token, { session: session.data, untilMs: Number(payload?.exp) * 1000 })
    return session.data
  }

  function endedMs(person: PersonId): Promise<number> {
    const known = stamps.get(person)
    if (known !== undefined && Date.now() - known.readMs < STAMP_MS) return known.at
    const at = readEnd(db, person)
    stamps.set(person, { readMs: Date.now(), at })
    at.catch(() => stamps.delete(person))
    return at
  }

  const isGood = async (session: Session): Promise<boolean> =>
    Date.parse(session.issuedAt) > (await endedMs(session.person))

  const setCookie = (value: string, seconds: number): string =>
    `${name}=${value}; Path=/; HttpOnly; SameSite=Lax; Max-Age=${seconds}${secure ? '; Secure' : ''}`

  return {
    async of(cookie) {
      const token = tokenIn(cookie ?? '', name)
      const session = token === null ? null : await decodeOnce(token)
      return session !== null && (await isGood(session)) ? session : null
    },
    async cookieFor({ person, ...claims }) {
      const token = { sub: person, ...claims }
      const value = await encode({ token, secret, maxAge: SESSION_SECONDS })
      return setCookie(value, SESSION_SECONDS)
    },
    noCookie: () => setCookie('', 0),
    async end(person) {
      // Our clock, not the database's: `issuedAt` is by ours as well.
      await db.query('update "Person" set "signedOutAt" = $2 where "id" = $1', [person, new Date()])
      stamps.delete(person)
    },
    isGood,
  }
}

/** When the person's sessions were last ended, in ms; forever where there is no such person any more. */
async function readEnd(db: Queryable, person: PersonId): Promise<number> {
  const { rows } = await db.query<{ readonly signedOutAt: Date | null }>(
    'select "signedOutAt" from "Person" where "id" = $1 and "removedAt" is null',
    [person],
  )
  const row = rows[0]
  if (row === undefined) return Number.POSITIVE_INFINITY
  return row.signedOutAt?.getTime() ?? 0
}

/** The session's token in a `Cookie` header; next-auth cuts a long one into `.0`, `.1` and so on. */
function tokenIn(header: string, name: string): string | null {
  const parts: { readonly at: number; readonly value: string }[] = []
  for (const pair of header.split(';')) {
    const [key = '', ...value] = pair.trim().split('=')
    if (key === name) return value.join('=')
    const chunk = key.startsWith(`${name}.`) ? Number(key.slice(name.length + 1)) : Number.NaN
    if (Number.isInteger(chunk)) parts.push({ at: chunk, value: value.join('=') })
  }
  if (parts.length === 0) return null
  return parts
    .sort((a, b) => a.at - b.at)
    .map(({ value }) => value)
    .join('')
}
