'use client'
import { useCallback, useSyncExternalStore } from 'react'
import type { Zoom } from '@/lib/plan/drawn/wall.ts'

export const zooms: readonly Zoom[] = ['day', 'week', 'month']
const FIRST: Zoom = 'week'
const CHANGED = 'fettleyard-zoom'

function kept(key: string): Zoom {
  try {
    const found = localStorage.getItem(key)
    return zooms.find((zoom) => zoom === found) ?? FIRST
  } catch {
    // A browser that keeps nothing: it begins anew each time.
    return FIRST
  }
}

/** How near a person looks at a drawn build order; kept on this device for them. */
export function useZoom(person: string): readonly [Zoom, (zoom: Zoom) => void] {
  const key = `fettleyard.zoom.${person}`
  const zoom = useSyncExternalStore<Zoom>(
    (onChange) => {
      addEventListener(CHANGED, onChange)
      addEventListener('storage', onChange)
      return () => {
        removeEventListener(CHANGED, onChange)
        removeEventListener('storage', onChange)
      }
    },
    () => kept(key),
    () => FIRST,
  )
  const change = useCallback(
    (next: Zoom) => {
      try {
        localStorage.setItem(key, next)
      } catch {
        return
      }
      dispatchEvent(new Event(CHANGED))
    },
    [key],
  )
  return [zoom, change]
}
