'use client'
import Link from 'next/link'
import { EmptyState, Head, Notice, Plate } from '@/app/_ui/paper.tsx'
import { signInPath } from '@/app/_ui/unsent-line.tsx'
import { usePhonePlace } from '@/app/_ui/use-phone-place.ts'
import { useConnection } from '@/lib/live/live-provider.tsx'
import { unsentOf } from '@/lib/live/outbox/outbox-view.ts'
import type { Queued } from '@/lib/live/outbox/unsent-store.ts'
import { useOutboxView } from '@/lib/live/outbox/use-outbox.ts'
import { timeOfDay } from '@/lib/words/dates.ts'
import { counted } from '@/lib/words/money.ts'
import type { Place } from '@/lib/words/reader.ts'
import { UnsentItem } from './unsent-item.tsx'

/** All that was pressed on this phone and the server has not said yes to: what waits, and what was refused as it arrived. */
export function UnsentScreen() {
  const view = useOutboxView()
  const { mine, others } = unsentOf(view)
  const place = usePhonePlace()
  const { link, knownUntil } = useConnection()
  const refused = mine.filter(({ no }) => no !== null)
  const waiting = mine.filter(({ no }) => no === null)
  const name = mine[0]?.personName ?? ''
  return (
    <main className="page stack" id="content">
      <Plate title="Unsent" under="What was pressed on this phone and hasn’t gone out">
        {name !== '' && <b>{name}</b>}
      </Plate>
      <div className="live-line small">
        <p role="status">
          {link === 'live' && 'Live'}
          {link === 'starting' && 'Connecting…'}
          {link === 'away' && `No network since ${timeOfDay(knownUntil, place)}`}
        </p>
        <p>
          <Link className="row-link" prefetch={false} href="/?in">
            To my work
          </Link>
        </p>
      </div>
      {view.signedOut && waiting.length > 0 && (
        <Notice mark="unsent">
          <p>
            <Link prefetch={false} href={signInPath()}>
              Sign in again as {name}:{' '}
              {counted(waiting.length, 'press waits', 'presses wait', place.locale)}
            </Link>
          </p>
        </Notice>
      )}
      {refused.length > 0 && <Items title="Refused on arrival" items={refused} place={place} />}
      {waiting.length > 0 && (
        <Items title="Goes when there is signal" items={waiting} place={place} />
      )}
      {mine.length === 0 && (
        <EmptyState title="Everything is sent">
          <p>What you press without signal stands here until it has gone out.</p>
        </EmptyState>
      )}
      <Others items={others} locale={place.locale} />
    </main>
  )
}

function Items({
  title,
  items,
  place,
}: {
  readonly title: string
  readonly items: readonly Queued[]
  readonly place: Place
}) {
  return (
    <section className="stack tight">
      <Head title={title} note={items.length} />
      <ol className="cols cols-2">
        {items.map((item) => (
          <li key={item.place} className="sheet stack tight">
            <UnsentItem item={item} place={place} />
          </li>
        ))}
      </ol>
    </section>
  )
}

/** That others have something here, and what becomes of it; never what. */
function Others({ items, locale }: { readonly items: readonly Queued[]; readonly locale: string }) {
  const names = Map.groupBy(items, ({ person }) => person)
  if (names.size === 0) return null
  return (
    <section className="sheet stack tight">
      <Head title="Of others" note={items.length} />
      <ul className="ruled">
        {[...names].map(([person, theirs]) => (
          <li key={person}>
            {counted(theirs.length, 'press', 'presses', locale)} of {theirs[0]?.personName}: kept
            here until they sign in again.
          </li>
        ))}
      </ul>
    </section>
  )
}
