import type { Context, Hono, MiddlewareHandler } from 'hono'
import { bodyLimit } from 'hono/body-limit'
import { CODE_HEADER, PERSON_HEADER } from '../../command/person-header.ts'
import type { Changed, CommandAnswer } from '../../command/wire.ts'
import type { Condition } from '../../record/condition.ts'
import { seeConditions } from '../../see/see-conditions.ts'
import { needsWords } from '../../words/code-words.ts'
import type { Looker } from '../lane/actor.ts'
import type { AnyMove, Outcome } from '../lane/outcome.ts'
import { type AnyRecord, isProject } from '../load.ts'
import type { Devices } from '../people/devices.ts'
import { lookerOf } from '../people/looker.ts'
import type { Names } from '../people/names.ts'
import type { Sessions } from '../people/session.ts'
import type { Signing } from '../people/signing.ts'
import type { Commands } from '../run-command.ts'
import { changedFor, personsOf, shopChangedFor } from '../views/changed-for.ts'
import type { Reading } from '../views/reading.ts'

/** A build order of 5,000 lines has about half of this, in bytes. */
const BODY_MOST = 4 * 2 ** 20

/** What the door for commands needs. */
export interface CommandDoor {
  readonly commands: Pick<Commands, 'run'>
  readonly sessions: Pick<Sessions, 'of'>
  readonly devices: Pick<Devices, 'of'>
  readonly signing: Signing
  readonly reading: Pick<Reading, 'viewOf' | 'roleIn'>
  readonly names: Names
}

/** `POST /api/commands`: the one way in for every change. */
export function commandRoutes(api: Hono, door: CommandDoor): void {
  api.use('/commands', atMost)
  api.post('/commands', async (context) => {
    const looker = await lookerOf(context.req.header('cookie'), door)
    if (looker === null) return context.json({ message: 'Sign in first.' }, 401)
    const presser = context.req.header(PERSON_HEADER)
    if (!('phone' in looker) && presser !== undefined && presser !== looker.person) {
      return context.json(
        { message: 'Somebody else is signed in here: whoever pressed it signs in first.' },
        401,
      )
    }
    let raw: unknown
    try {
      raw = await context.req.json()
    } catch {
      const message = 'The body is not JSON.'
      return context.json({ issues: [{ field: '', message }], message }, 400)
    }
    const who =
      'phone' in looker
        ? await door.signing.whoPresses(looker, presser, context.req.header(CODE_HEADER), raw)
        : looker
    const { status, ...body } = await answer(door, who, await door.commands.run(who, raw))
    return context.json(body, status)
  })
}

const tooLong = (context: Context) =>
  context.json({ issues: [], message: `A command has at most ${BODY_MOST / 2 ** 20} MB.` }, 400)
const counted = bodyLimit({ maxSize: BODY_MOST, onError: tooLong })

/** Keeps out what is too long. Only a body whose length isn't announced is counted: that costs a tenth of a command's time. */
const atMost: MiddlewareHandler = (context, next) => {
  const length = context.req.header('content-length')
  if (length === undefined) return counted(context, next)
  return Number(length) > BODY_MOST ? Promise.resolve(tooLong(context)) : next()
}

async function answer(door: CommandDoor, who: Looker, outcome: Outcome): Promise<CommandAnswer> {
  switch (outcome.is) {
    case 'done': {
      const changed = await Promise.all(outcome.moves.map((move) => seenBy(door, who, move)))
      return { status: 200, changed: changed.filter((one) => one !== null) }
    }
    case 'refused': {
      const { record, conditions } = outcome
      return {
        status: 409,
        conditions: await conditionsFor(door, who, record, conditions),
        message: 'Not now: each condition says who can clear it.',
      }
    }
    case 'invalid':
      return {
        status: 400,
        issues: outcome.issues,
        message: 'Nothing was changed: a field is wrong.',
      }
    case 'forbidden':
      return {
        status: 403,
        message: 'This is not for you to do. Ask the party that it belongs to.',
      }
    case 'needs':
      return { status: 403, needs: outcome.needs, message: needsWords[outcome.needs] }
    case 'missing':
      return { status: 404, message: 'What it names is not here.' }
    case 'key reused':
      return {
        status: 422,
        message: 'This key stands for another command. Send it with a new key.',
      }
    case 'unavailable':
      return {
        status: 503,
        message: 'The database can’t be reached. Send it again with the same key.',
      }
  }
}

/** A refusal's conditions as this person may know them; none of a project that they were let out of meanwhile. */
async function conditionsFor(
  { reading }: CommandDoor,
  who: Looker,
  record: AnyRecord,
  conditions: readonly Condition[],
): Promise<readonly Condition[]> {
  // A shop's people see all of its book; a project not yet begun has nothing to hide.
  if (!isProject(record) || record.version === 0) return conditions
  const view = await reading.viewOf(who, record)
  return view === null ? [] : seeConditions(view, record, conditions)
}

/** A move as this person sees it; null where the record isn't theirs to see, such as another shop's book. */
async function seenBy(
  { reading, names }: CommandDoor,
  who: Looker,
  any: AnyMove,
): Promise<Changed | null> {
  const known = await names(personsOf(any.move))
  if (any.of === 'project') {
    const view = await reading.viewOf(who, any.move.record)
    return view === null ? null : changedFor(view, any.move, known)
  }
  const role = await reading.roleIn(who, any.move.record)
  return role === null ? null : shopChangedFor(role, any.move, known)
}
