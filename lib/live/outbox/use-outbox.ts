'use client'
import { useSyncExternalStore } from 'react'
import { useLive } from '../live-provider.tsx'
import { emptyView, type OutboxView } from './outbox-view.ts'
import type { Queued } from './unsent-store.ts'

/** The queue of this phone, as it is. */
export function useOutboxView(): OutboxView {
  const { outbox } = useLive()
  return useSyncExternalStore(outbox.subscribe, outbox.view, () => emptyView)
}

/** What is unsent of one person: in order, and how many of others wait for them to sign in again. */
export interface UnsentOf {
  readonly mine: readonly Queued[]
  readonly others: readonly Queued[]
}

/** Tells apart whose presses are on this phone. */
export const unsentOf = ({ items, person }: OutboxView): UnsentOf => ({
  mine: items.filter((item) => item.person === person),
  others: items.filter((item) => item.person !== person),
})
