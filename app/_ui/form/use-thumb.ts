'use client'
import { useSyncExternalStore } from 'react'

const COARSE = '(pointer: coarse)'

const subscribe = (told: () => void): (() => void) => {
  const query = matchMedia(COARSE)
  query.addEventListener('change', told)
  return () => query.removeEventListener('change', told)
}

/** Whether this device is pressed with a thumb first. Not known on the server: there the plain field stands. */
export const useThumb = (): boolean =>
  useSyncExternalStore(
    subscribe,
    () => matchMedia(COARSE).matches,
    () => false,
  )
