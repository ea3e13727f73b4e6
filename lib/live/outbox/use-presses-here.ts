'use client'
import { useMemo } from 'react'
import type { CommandName } from '../../record/command-names.ts'
import { useLive } from '../live-provider.tsx'
import { newKey } from '../new-key.ts'
import { letBe, signUntilRight } from '../shop-phone/sign-until-right.ts'
import type { PressOutcome } from './outbox.ts'
import { type About, isPressOf } from './press-of.ts'
import { senderOf } from './sender-of.ts'
import type { Queued } from './unsent-store.ts'
import { useOutboxView } from './use-outbox.ts'

/** What can be done with a command in the queue, from wherever it is shown. */
export interface QueuePresses {
  /** Sends a refused one again: with its key, unless the server has that key for another command. */
  readonly sendAgain: (item: Queued) => Promise<PressOutcome>
  /** Asks the hand of a signature that waits for their code, and sends it. */
  readonly sign: (item: Queued) => Promise<PressOutcome>
  /** Takes it out. @returns how to put it back */
  readonly drop: (item: Queued) => Promise<() => void>
}

/** What was pressed at one place, and lies in the queue. */
export interface PressesHere extends QueuePresses {
  readonly kept: readonly Queued[]
  readonly refused: readonly Queued[]
}

/** The presses on the queue; `expected` has the versions that are looked at by now. */
export function useQueuePresses(): QueuePresses {
  const live = useLive()
  return useMemo(
    () => ({
      async sendAgain(item) {
        const outbox = await live.outbox.load()
        if (outbox === null) return { status: 0 }
        const key = item.no?.status === 422 ? newKey(live.connection.nowMs()) : item.request.key
        // Whoever sends it again has seen what became of the record meanwhile.
        const { expected: _, ...request } = item.request
        const expected = live.versionsOf(Object.keys(item.request.expected ?? {}))
        return (await outbox.sendAgain({ ...item, request: { ...request, key, expected } })).outcome
      },
      async sign({ needs, ...item }) {
        const outbox = await live.outbox.load()
        if (outbox === null || needs === undefined) return { status: 0 }
        const { person, request } = item
        const signed = { person, command: request.name, key: request.key }
        const asked: PressOutcome = { status: 403, message: '', needs }
        const came = await signUntilRight(
          signed,
          asked,
          async () => (await outbox.sendAgain(item)).outcome,
        )
        return came ?? letBe
      },
      async drop(item) {
        const outbox = await live.outbox.load()
        await outbox?.drop(item.place)
        return () => void outbox?.restore(item)
      },
    }),
    [live],
  )
}

/** What was pressed here by whoever reads, and is unsent. */
export function usePressesHere(name: CommandName, about: About | undefined): PressesHere {
  const { items, sender } = useOutboxView()
  const presses = useQueuePresses()
  const asked = about === undefined ? '' : JSON.stringify(about)
  // biome-ignore lint/correctness/useExhaustiveDependencies: `about` is another object at each paint; `asked` is what it says
  return useMemo(() => {
    const path = typeof location === 'undefined' ? '' : location.pathname
    const mine = items.filter(
      (item) => senderOf(item) === sender && isPressOf(item, name, about, path),
    )
    return {
      ...presses,
      kept: mine.filter(({ no }) => no === null),
      refused: mine.filter(({ no }) => no !== null),
    }
  }, [items, sender, name, asked, presses])
}
