'use client'
import { useCallback, useEffect, useRef, useState } from 'react'
import type { CommandRequest } from '../command/wire.ts'
import type { CommandName } from '../record/command-names.ts'
import type { Condition, Json } from '../record/condition.ts'
import type { InputIssue } from '../record/input-issue.ts'
import type { Instant } from '../record/scalars.ts'
import { type Outcome, postCommand } from './http.ts'
import { useLive } from './live-provider.tsx'
import { newKey } from './new-key.ts'
import { useProjectIfAny } from './project-provider.tsx'
import { useShopIfAny } from './shop-provider.tsx'

/** What stands after a press, and what can be done about it. */
export interface CommandPress {
  /** Sends the command. What was typed stays with the screen, which clears it when it is done. */
  readonly send: (input: Json, happenedAt?: Instant) => Promise<Outcome>
  /** Sends the last one again, with its key: done once, however often it is sent. Null where there is nothing to send. */
  readonly again: (() => Promise<Outcome>) | null
  readonly waiting: boolean
  /** Conditions that refused it. */
  readonly refused: readonly Condition[]
  /** When the refusal came. */
  readonly refusedAt: Instant | null
  readonly issues: readonly InputIssue[]
  readonly done: boolean
  /** Words of the server, or that no answer came; empty while all is well. */
  readonly message: string
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

/** What is wrong with an input, found on the phone; none where the registry has not come or does not know it. */
async function localIssues(name: CommandName, input: Json): Promise<readonly InputIssue[]> {
  try {
    const { inputIssues } = await import('./input-issues.ts')
    return inputIssues(name, input)
  } catch {
    // No signal to fetch the rules with: the server has them too.
    return []
  }
}

function after(outcome: Outcome, now: Instant): After {
  switch (outcome.status) {
    case 0:
      return { ...idle, message: NO_ANSWER }
    case 200:
      return { ...idle, done: true }
    case 400:
      return { ...idle, issues: outcome.issues, message: outcome.message }
    case 409:
      return { ...idle, refused: outcome.conditions, refusedAt: now, message: outcome.message }
    default:
      return { ...idle, message: outcome.message }
  }
}

/**
 * The press of one command: sends it at once, and says what came of it. `onDone` runs when it was carried out, also by a second
 * sending: a form clears itself there, and nowhere else.
 */
export function useCommand(name: CommandName, onDone?: () => void): CommandPress {
  const live = useLive()
  const project = useProjectIfAny()
  const shop = useShopIfAny()
  const [state, setState] = useState<After>(idle)
  const [last, setLast] = useState<CommandRequest | null>(null)
  // What the person was looking at when they pressed, read at the press.
  const looking = useRef<{ readonly [record: string]: number }>({})
  const whenDone = useRef(onDone)
  useEffect(() => {
    whenDone.current = onDone
    looking.current = {
      ...(project === null ? {} : { [project.record.id]: project.record.version }),
      ...(shop === null ? {} : { [shop.book.id]: shop.book.version }),
    }
  })

  const post = useCallback(
    async (request: CommandRequest): Promise<Outcome> => {
      setState({ ...idle, waiting: true })
      const issues = await localIssues(request.name, request.input)
      const outcome: Outcome =
        issues.length > 0
          ? { status: 400, issues, message: 'Nothing was changed.' }
          : await postCommand(request, null)
      if (outcome.status === 200) for (const changed of outcome.changed) live.take(changed)
      setLast(outcome.status === 0 || outcome.status === 503 ? request : null)
      setState(after(outcome, live.now()))
      if (outcome.status === 200) whenDone.current?.()
      return outcome
    },
    [live],
  )
  const send = useCallback(
    (input: Json, happenedAt?: Instant) =>
      post({
        name,
        input,
        key: newKey(live.connection.nowMs()),
        happenedAt: happenedAt ?? live.now(),
        expected: looking.current,
      }),
    [post, name, live],
  )
  const reset = useCallback(() => {
    setState(idle)
    setLast(null)
  }, [])
  return { ...state, send, reset, again: last === null ? null : () => post(last) }
}
