'use client'
import { useMemo } from 'react'
import type { CommandName } from '../../record/command-names.ts'
import { useLive } from '../live-provider.tsx'
import { newKey } from '../new-key.ts'
import type { PressOutcome } from './outbox.ts'
import { type About, isPressOf } from './press-of.ts'
import type { Queued } from './unsent-store.ts'
import { useOutboxView } from './use-outbox.ts'

/** What can be done with a command in the queue, from wherever it is shown. */
export interface QueuePresses {
  /** Sends a refused one again: with its key, unless the server has that key for another command. */
  readonly sendAgain: (item: Queued) => Promise<PressOutcome>
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
  const { items, person } = useOutboxView()
  const presses = useQueuePresses()
  const asked = about === undefined ? '' : JSON.stringify(about)
  // biome-ignore lint/correctness/useExhaustiveDependencies: `about` is another object at each paint; `asked` is what it says
  return useMemo(() => {
    const path = typeof location === 'undefined' ? '' : location.pathname
    const mine = items.filter(
      (item) => item.person === person && isPressOf(item, name, about, path),
    )
    return {
      ...presses,
      kept: mine.filter(({ no }) => no === null),
      refused: mine.filter(({ no }) => no !== null),
    }
  }, [items, person, name, asked, presses])
}
