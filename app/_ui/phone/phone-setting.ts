'use client'
import { useSyncExternalStore } from 'react'

/** What is chosen for this phone, whoever signs in on it; each is on or off. */
export type PhoneSetting = 'buzz' | 'screen-on'

const key = (name: PhoneSetting): string => `fettleyard-${name}`
const listeners = new Set<() => void>()

/** Some browsers keep nothing in private windows: then it holds while the tab does. */
const held = new Map<PhoneSetting, boolean>()

/** Whether it is on; `normal` where nobody chose. */
export function phoneSetting(name: PhoneSetting, normal: boolean): boolean {
  const here = held.get(name)
  if (here !== undefined) return here
  try {
    const kept = localStorage.getItem(key(name))
    return kept === null ? normal : kept === 'on'
  } catch {
    return normal
  }
}

/** Keeps a choice on this phone. */
export function keepPhoneSetting(name: PhoneSetting, on: boolean): void {
  held.set(name, on)
  try {
    localStorage.setItem(key(name), on ? 'on' : 'off')
  } catch {
    // Held for this tab, at least.
  }
  for (const told of listeners) told()
}

function subscribe(told: () => void): () => void {
  // Another tab may have chosen: what it wrote counts.
  const written = () => {
    held.clear()
    told()
  }
  listeners.add(told)
  addEventListener('storage', written)
  return () => {
    listeners.delete(told)
    removeEventListener('storage', written)
  }
}

/** A choice of this phone, as it stands now. On the server, as nobody chose. */
export const usePhoneSetting = (name: PhoneSetting, normal: boolean): boolean =>
  useSyncExternalStore(
    subscribe,
    () => phoneSetting(name, normal),
    () => normal,
  )
