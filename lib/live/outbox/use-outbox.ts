'use client'
import { useSyncExternalStore } from 'react'
import { useLive } from '../live-provider.tsx'
import { emptyView, type OutboxView } from './outbox-view.ts'

/** The queue of this phone, as it is. */
export function useOutboxView(): OutboxView {
  const { outbox } = useLive()
  return useSyncExternalStore(outbox.subscribe, outbox.view, () => emptyView)
}
