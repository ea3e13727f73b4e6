import type { HttpBindings } from '@hono/node-server'
import type { Context } from 'hono'
import * as z from 'zod/mini'
import type { Me } from '../../command/wire.ts'
import type { Fault } from '../../command/wire-access.ts'
import { inputIssues } from '../../record/input-issue.ts'
import type { Doors } from '../doors.ts'
import type { Looker } from '../lane/actor.ts'
import { type Doorkeepers, lookerOf, type OnPhone } from '../people/looker.ts'
import { meOf } from '../people/me.ts'
import { TooOften } from '../people/rate-limit.ts'
import type { Session, Sessions } from '../people/session.ts'
import { ADDRESS_HEADER } from '../web/address.ts'

/** Thrown by a route where the answer is a no that the person can act on. */
export class Refused extends Error {
  override name = 'Refused'
  readonly status: 400 | 401 | 403 | 404 | 409 | 413 | 415
  readonly field: string
  constructor(status: Refused['status'], field: string, message: string) {
    super(message)
    this.status = status
    this.field = field
  }
}

/** The answer to what a route threw; undefined where it is a fault of ours. */
export function faultAnswer(context: Context, error: unknown): Response | undefined {
  if (error instanceof Refused) {
    return context.json(fault(error.field, error.message), error.status)
  }
  if (error instanceof TooOften) {
    context.header('retry-after', String(error.seconds))
    return context.json(fault('', error.message), 429)
  }
  return undefined
}

const fault = (field: string, message: string): Fault => ({ error: { field, message } })

/** Which person is signed in as themselves: on a shop's phone nobody is. @throws {Refused} 401 */
export async function signedIn(context: Context, sessions: Sessions): Promise<Session> {
  const session = await sessions.of(context.req.header('cookie'))
  if (session === null) throw new Refused(401, '', 'Sign in first.')
  return session
}

/** Who looks, a shop's phone included. @throws {Refused} 401 */
export async function lookerIn(context: Context, doors: Doorkeepers): Promise<OnPhone | Session> {
  const looker = await lookerOf(context.req.header('cookie'), doors)
  if (looker === null) throw new Refused(401, '', 'Sign in first.')
  return looker
}

/** Who answers for what comes from there: the person, or who made this phone the shop's. @throws {Refused} 401 */
export async function answerableIn(context: Context, doors: Doorkeepers): Promise<Looker> {
  const looker = await lookerIn(context, doors)
  return 'phone' in looker ? { ...looker, person: looker.phone.addedBy } : looker
}

/** Who is signed in, with their places. @throws {Refused} 401 also where the account went meanwhile */
export async function meIn(context: Context, doors: Doors): Promise<Me> {
  const { prisma, reading } = doors
  const me = await meOf(prisma, reading, await lookerIn(context, doors))
  if (me === null) throw new Refused(401, '', 'Sign in first.')
  return me
}

/** What is there for this person. @throws {Refused} 404 */
export function orNotFound<T>(found: T | null): T {
  if (found === null) throw new Refused(404, '', 'There is nothing here that you may see.')
  return found
}

/** The JSON body as `schema` wants it. @throws {Refused} 400 that names the first field that is wrong */
export async function bodyOf<Schema extends z.ZodMiniType>(
  context: Context,
  schema: Schema,
): Promise<z.infer<Schema>> {
  const body: unknown = await context.req.json().catch(() => {
    throw new Refused(400, 'body', 'The body is not JSON.')
  })
  return checked(body, schema)
}

/** A query's or a path's values as `schema` wants them. @throws {Refused} 400 */
export function checked<Schema extends z.ZodMiniType>(
  value: unknown,
  schema: Schema,
): z.infer<Schema> {
  const parsed = z.safeParse(schema, value)
  if (parsed.success) return parsed.data
  const [issue] = inputIssues(parsed.error)
  throw new Refused(400, issue?.field ?? '', issue?.message ?? 'This can’t be read.')
}

/** Where the request came from: stamped by our own server (`address.ts`). */
export function addressOf(context: Context): string {
  const { incoming }: HttpBindings = context.env
  return String(incoming.headers[ADDRESS_HEADER])
}
