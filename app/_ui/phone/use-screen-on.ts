'use client'
import { useEffect, useState, useSyncExternalStore } from 'react'

const never = () => () => {}

/** Whether this device keeps its screen on for a page at all (Screen Wake Lock, W3C). Not known on the server. */
export const useCanKeepOn = (): boolean =>
  useSyncExternalStore(
    never,
    () => 'wakeLock' in navigator,
    () => false,
  )

/** How it stands: `let go` where the device took it back, as it does on a low battery. */
export type ScreenOn = 'off' | 'on' | 'let go'

/** Keeps the screen on while `wanted` and this page is looked at; taken up again when it comes back into sight. */
export function useScreenOn(wanted: boolean): ScreenOn {
  const [state, setState] = useState<ScreenOn>('off')
  useEffect(() => {
    if (!wanted || !('wakeLock' in navigator)) {
      setState('off')
      return
    }
    let over = false
    let lock: WakeLockSentinel | null = null
    const take = async () => {
      if (over || document.hidden || (lock !== null && !lock.released)) return
      try {
        const got = await navigator.wakeLock.request('screen')
        if (over) {
          await got.release()
          return
        }
        lock = got
        setState('on')
        got.addEventListener('release', () => {
          if (!over && !document.hidden) setState('let go')
        })
      } catch {
        // The device said no: a low battery, or a page that isn't looked at.
        if (!over) setState('let go')
      }
    }
    const looked = () => void take()
    document.addEventListener('visibilitychange', looked)
    void take()
    return () => {
      over = true
      document.removeEventListener('visibilitychange', looked)
      void lock?.release()
    }
  }, [wanted])
  return state
}
