'use client'
import { phoneSetting } from './phone-setting.ts'

/** What a hand in a glove feels, in ms of buzz and pause: done, amiss, found. */
const patterns = {
  done: [60],
  amiss: [90, 70, 90],
  found: [40, 50, 40],
} as const

/** Whether this device has something to feel at all. */
export const canBuzz = (): boolean => typeof navigator !== 'undefined' && 'vibrate' in navigator

/** Lets the phone be felt, unless its keeper switched it off or wants less motion. The words on the screen say the same. */
export function buzz(what: keyof typeof patterns): void {
  if (!canBuzz() || !phoneSetting('buzz', true)) return
  if (matchMedia('(prefers-reduced-motion: reduce)').matches) return
  navigator.vibrate([...patterns[what]])
}
