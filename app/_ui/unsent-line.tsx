'use client'
import Link from 'next/link'
import { Mark } from '@/app/_ui/mark.tsx'
import { unsentOf } from '@/lib/live/outbox/outbox-view.ts'
import { useOutboxView } from '@/lib/live/outbox/use-outbox.ts'
import { since } from '@/lib/words/dates.ts'
import { counted } from '@/lib/words/money.ts'
import type { Place } from '@/lib/words/reader.ts'

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
    <div className="unsent-line" role="status">
      <p className="rowmark">
        <Mark name={waiting > 0 ? 'unsent' : 'refused'} />
        <Link className="row-link" prefetch={false} href="/unsent">
          {waiting > 0 && `${waiting} unsent, the oldest ${since(oldest.pressedAt, place)}`}
          {waiting > 0 && refused > 0 && '; '}
          {refused > 0 && `${refused} refused on arrival`}
        </Link>
      </p>
      {held !== undefined && (
        <p>
          <Link className="row-link" prefetch={false} href="/unsent">
            {held.personName} signs first: what was pressed after it waits
          </Link>
        </p>
      )}
      {view.signedOut && waiting > 0 && (
        <p>
          <Link className="row-link" prefetch={false} href={signInPath()}>
            Sign in again as {name}: {counted(waiting, 'press waits', 'presses wait', place.locale)}
          </Link>
        </p>
      )}
    </div>
  )
}

/** The door, and back here. */
export const signInPath = (): string =>
  `/sign-in?again=1&next=${encodeURIComponent(typeof location === 'undefined' ? '/' : location.pathname)}`
