'use client'
import { unsentOf } from '@/lib/live/outbox/outbox-view.ts'
import { useOutboxView } from '@/lib/live/outbox/use-outbox.ts'
import { since } from '@/lib/words/dates.ts'
import { counted } from '@/lib/words/money.ts'
import type { Place } from '@/lib/words/reader.ts'
import { UnsentFace } from './unsent-face.tsx'

/** How much of what was pressed here isn't sent, and since when: always in view, and the way to the list. */
export function UnsentLine({ place }: { readonly place: Place }) {
  const view = useOutboxView()
  const { mine } = unsentOf(view)
  const oldest = mine[0]
  if (oldest === undefined) return null
  const refused = mine.filter(({ no }) => no !== null).length
  const waiting = mine.length - refused
  const name = oldest.personName
  const held = mine.find(({ needs }) => needs !== undefined)
  return (
    <UnsentFace
      waiting={waiting}
      refused={refused}
      oldest={since(oldest.pressedAt, place)}
      signsFirst={held?.personName}
      signIn={
        view.signedOut && waiting > 0
          ? {
              path: signInPath(),
              words: `Sign in again as ${name}: ${counted(waiting, 'press waits', 'presses wait', place.locale)}`,
            }
          : undefined
      }
    />
  )
}

/** The door, and back here. */
export const signInPath = (): string =>
  `/sign-in?again=1&next=${encodeURIComponent(typeof location === 'undefined' ? '/' : location.pathname)}`
