'use client'
import { useCallback, useEffect, useMemo, useRef, useState } from 'react'
import { needsProof } from '../command/needs-proof.ts'
import type { Changed, CommandRequest } from '../command/wire.ts'
import type { CommandName } from '../record/command-names.ts'
import type { Condition, Json } from '../record/condition.ts'
import type { Entity } from '../record/entity.ts'
import type { InputIssue } from '../record/input-issue.ts'
import type { Instant } from '../record/scalars.ts'
import { type Outcome, postCommand } from './http.ts'
import type { Live } from './live.ts'
import { useLive } from './live-provider.tsx'
import { newKey } from './new-key.ts'
import type { PressOutcome } from './outbox/outbox.ts'
import type { About } from './outbox/press-of.ts'
import { sameInput } from './outbox/press-of.ts'
import { type PressesHere, usePressesHere } from './outbox/use-presses-here.ts'
import { useWherePressed } from './outbox/use-where-pressed.ts'
import type { Unsent } from './phone/phone-store.ts'
import { putCode } from './shop-phone/codes.ts'
import { type Pressing, pressing } from './shop-phone/shop-phone.ts'
import { letBe, signUntilRight } from './shop-phone/sign-until-right.ts'

/** How a press ended well: carried out, or safe on this phone until there is signal. */
export type Through = 'done' | 'kept'

/** What stands after a press, and what can be done about it. */
export interface CommandPress {
  /**
   * Keeps the command on this phone and sends it. Resolves with the server's answer, or with *kept* where none can be had now. What was
   * typed stays with the screen, which clears it when it is through.
   */
  readonly send: (input: Json, happenedAt?: Instant) => Promise<PressOutcome>
  /** Sends the last one again, with its key: done once, however often it is sent. Null where there is nothing to send. */
  readonly again: (() => Promise<PressOutcome>) | null
  readonly waiting: boolean
  /** Conditions that refused it. */
  readonly refused: readonly Condition[]
  /** When the refusal came. */
  readonly refusedAt: Instant | null
  readonly issues: readonly InputIssue[]
  readonly done: boolean
  /** Words of the server, or that no answer came; empty while all is well. */
  readonly message: string
  /** What was pressed here and isn't sent, and what was refused when it arrived. */
  readonly here: PressesHere
  /** Says that what was refused in that place is in the form again: the next press is another try of it. */
  readonly takeUp: (place: number) => void
  readonly reset: () => void
}

interface After {
  readonly waiting: boolean
  readonly refused: readonly Condition[]
  readonly refusedAt: Instant | null
  readonly issues: readonly InputIssue[]
  readonly done: boolean
  readonly message: string
}
const idle: After = {
  waiting: false,
  refused: [],
  refusedAt: null,
  issues: [],
  done: false,
  message: '',
}

const NO_ANSWER = 'No answer from the server. What you entered is still here; send it again.'
const NEEDS_SIGNAL =
  'A yes needs signal: you prove who you are as you give it. Nothing was sent; what you entered is still here.'

function after(outcome: PressOutcome, now: Instant, noAnswer: string): After {
  switch (outcome.status) {
    case 0:
      return { ...idle, message: noAnswer }
    case 200:
      return { ...idle, done: true }
    case 'kept':
      return idle
    case 400:
      return { ...idle, issues: outcome.issues, message: outcome.message }
    case 409:
      return { ...idle, refused: outcome.conditions, refusedAt: now, message: outcome.message }
    default:
      return { ...idle, message: outcome.message }
  }
}

/** Without a network, as far as this phone can tell. */
const isAway = ({ connection }: Live): boolean => !navigator.onLine || connection.link() === 'away'

/** A press as whoever works at the shop's phone made it; on one's own it is one's own. */
function pressedBy(who: Pressing | 'own', item: Unsent | null): Unsent | null {
  if (who === 'own' || item === null) return item
  const { device, person, personName } = who
  return { ...item, device, person, personName }
}

/** What is wrong with an input, before it is sent; where its rules can't be had the server tells. */
async function issuesOf(
  live: Live,
  name: CommandName,
  input: Json,
): Promise<readonly InputIssue[]> {
  const outbox = await live.outbox.load()
  await outbox?.fetchCommand(name).catch(() => undefined)
  return outbox?.issuesOf(name, input) ?? []
}

/** The entities that a press left, as they are now. */
const madeBy = (changed: readonly Changed[]): readonly Entity[] =>
  changed.flatMap(({ entities }) => entities)

/** What came of a press, and whether the queue shows it. */
interface Came {
  readonly outcome: PressOutcome
  readonly listed: boolean
}

/**
 * The press of one command: keeps it, sends it, and says what came of it. `onDone` runs when it was carried out or is safe on this
 * phone, with the entities that it left: a form clears itself there, and nowhere else. `about`: what tells it from other presses of the same command on the screen.
 */
export function useCommand(
  name: CommandName,
  onDone?: (through: Through, made: readonly Entity[]) => void,
  about?: About,
): CommandPress {
  const live = useLive()
  const where = useWherePressed()
  const here = usePressesHere(name, about)
  const [state, setState] = useState<After>(idle)
  const [last, setLast] = useState<CommandRequest | null>(null)
  const isHere = useRef(false)
  // As things stand when the press is made.
  const at = useRef({ onDone, where, about, refused: here.refused })
  useEffect(() => {
    at.current = { onDone, where, about, refused: here.refused }
  })
  const takenUp = useRef<number | null>(null)
  useEffect(() => {
    isHere.current = true
    return () => {
      isHere.current = false
    }
  }, [])

  /** Past the queue: what needs proof, and what no record on this phone is about. */
  const direct = useCallback(
    async (request: CommandRequest, who: Pressing | 'own'): Promise<Outcome> => {
      const person = who === 'own' ? (at.current.where?.person ?? null) : who.person
      const outcome = await postCommand(request, person, who === 'own' ? null : who.code)
      if (outcome.status === 200) for (const changed of outcome.changed) live.take(changed)
      setLast(outcome.status === 0 || outcome.status === 503 ? request : null)
      return outcome
    },
    [live],
  )
  const queue = useCallback(
    async (request: CommandRequest, who: Pressing | 'own'): Promise<Came | null> => {
      const outbox = await live.outbox.load()
      const { where, about, refused } = at.current
      if (outbox === null || where === null) return null
      if (needsProof(request.name, request.input)) {
        // A yes goes after what was pressed before it.
        await outbox.flush()
        return null
      }
      try {
        // Another try takes the refused one's place. What was merely pressed on the same screen leaves it alone, with its input.
        const again = refused.find(
          ({ place, request: { input } }) =>
            about !== undefined || place === takenUp.current || sameInput(input, request.input),
        )
        const same =
          again !== undefined &&
          again.no?.status !== 422 &&
          sameInput(again.request.input, request.input)
        const { key, happenedAt } = same ? again.request : request
        await outbox.fetchCommand(request.name)
        const item = pressedBy(who, outbox.itemOf({ ...request, key, happenedAt }, where))
        if (item === null) return null
        if (who !== 'own' && who.code !== null) putCode(key, who.code)
        if (again !== undefined) {
          const sent = await outbox.sendAgain({ ...item, place: again.place })
          return { outcome: await sent.outcome, listed: true }
        }
        const { place, outcome } = await outbox.press(item)
        const signed = { person: item.person, command: request.name, key }
        const came = await signUntilRight(
          signed,
          await outcome,
          async () => (await outbox.sendAgain({ ...item, place })).outcome,
        )
        if (came === null) {
          await outbox.drop(place)
          return { outcome: letBe, listed: false }
        }
        // Shown at the press that made it, with its input still in it: it needn't be kept for later.
        const shown = came.status !== 200 && came.status !== 'kept' && isHere.current
        if (shown) await outbox.drop(place)
        return { outcome: came, listed: !shown }
      } catch {
        // No room on the phone, or no rules to fetch: it goes as it is made, or not at all.
        return null
      }
    },
    [live],
  )
  const sendBy = useCallback(
    async (who: Pressing | 'own' | null, request: CommandRequest): Promise<Came> => {
      if (who === null) return { outcome: letBe, listed: false }
      return (await queue(request, who)) ?? { outcome: await direct(request, who), listed: false }
    },
    [queue, direct],
  )
  const send = useCallback(
    async (input: Json, happenedAt?: Instant): Promise<PressOutcome> => {
      // Its own words are said, though what it changed may have turned the button into another by then.
      const { onDone } = at.current
      const pressedAt = live.now()
      const request: CommandRequest = {
        name,
        input,
        key: newKey(live.connection.nowMs()),
        happenedAt: happenedAt ?? pressedAt,
        expected: at.current.where?.expected ?? {},
      }
      setState({ ...idle, waiting: true })
      // By the same schema as on the server, which looks again; without the rules it alone does.
      const issues = await issuesOf(live, name, input)
      const { outcome, listed }: Came =
        issues.length > 0
          ? { outcome: { status: 400, issues, message: 'Nothing was changed.' }, listed: false }
          : await sendBy(await pressing(name, isAway(live)), request)
      const noAnswer = needsProof(name, input) ? NEEDS_SIGNAL : NO_ANSWER
      setState(listed && outcome.status !== 200 ? idle : after(outcome, live.now(), noAnswer))
      if (outcome.status === 200) onDone?.('done', madeBy(outcome.changed))
      if (outcome.status === 'kept') onDone?.('kept', [])
      return outcome
    },
    [name, live, sendBy],
  )
  const again = useCallback(
    async (request: CommandRequest): Promise<PressOutcome> => {
      setState({ ...idle, waiting: true })
      const who = await pressing(request.name, isAway(live))
      const outcome = who === null ? letBe : await direct(request, who)
      setState(after(outcome, live.now(), NO_ANSWER))
      if (outcome.status === 200) at.current.onDone?.('done', madeBy(outcome.changed))
      return outcome
    },
    [live, direct],
  )
  const takeUp = useCallback((place: number) => {
    takenUp.current = place
  }, [])
  const reset = useCallback(() => {
    setState(idle)
    setLast(null)
  }, [])
  return useMemo(
    () => ({
      ...state,
      send,
      reset,
      here,
      takeUp,
      again: last === null ? null : () => again(last),
    }),
    [state, send, reset, here, takeUp, last, again],
  )
}
