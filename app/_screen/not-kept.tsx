'use client'
import Link from 'next/link'
import { EmptyState, Head, Plate } from '@/app/_ui/paper.tsx'
import { projectPath, shopPath } from '@/app/_ui/paths.ts'
import { UnsentLine } from '@/app/_ui/unsent-line.tsx'
import { usePhonePlace } from '@/app/_ui/use-phone-place.ts'
import type { KeptView } from '@/lib/live/phone/phone-store.ts'
import { moment } from '@/lib/words/dates.ts'
import type { Place } from '@/lib/words/reader.ts'
import type { Found } from './find-kept.ts'
import { useReloadWhenBack } from './use-reload-when-back.ts'

type Missing = Exclude<Found, { readonly is: 'screen' } | { readonly is: 'alone' }>

const SAID: { readonly [Of in Missing['of']]: string } = {
  project: 'This phone does not keep that project.',
  shop: 'This phone does not keep that shop.',
  page: 'This page needs a network.',
}

/** Without a network, where nothing is kept for the address: says so, and leads to what is kept. */
export function NotKept({ found }: { readonly found: Missing }) {
  useReloadWhenBack()
  const place = usePhonePlace()
  const shops = found.kept.filter(({ kind }) => kind === 'shop')
  const projects = found.kept.filter(({ kind }) => kind === 'project')
  return (
    <main className="page stack" id="content">
      <Plate title="Fettleyard" under="No network. What this phone keeps can be read." />
      <UnsentLine place={place} />
      {found.is === 'missing' && (
        <section className="sheet stack">
          <h2>{SAID[found.of]}</h2>
          <p>It opens as soon as there is a signal. Nothing is lost.</p>
          <div className="row">
            <button type="button" className="btn" onClick={() => window.location.reload()}>
              Try again
            </button>
          </div>
        </section>
      )}
      {found.kept.length === 0 && (
        <EmptyState title="Nothing is kept here yet">
          <p>
            Open a project or a day sheet once with a signal. From then on it opens without one, for
            whoever is signed in.
          </p>
        </EmptyState>
      )}
      <KeptList title="Shops" of={shops} place={place} />
      <KeptList title="Projects" of={projects} place={place} />
      {found.is === 'list' && (
        <div>
          <button type="button" className="btn btn-line" onClick={() => window.location.reload()}>
            Look for a network
          </button>
        </div>
      )}
    </main>
  )
}

function KeptList({
  title,
  of,
  place,
}: {
  readonly title: string
  readonly of: readonly KeptView[]
  readonly place: Place
}) {
  if (of.length === 0) return null
  return (
    <section className="stack tight">
      <Head title={title} note={of.length} />
      <ul className="stack tight">
        {of.map((kept) => (
          <li key={kept.record}>
            <Link
              className="line line-two"
              prefetch={false}
              href={kept.kind === 'shop' ? shopPath(kept.record) : projectPath(kept.record)}
            >
              <span>
                <b className="big">{nameOf(kept)}</b>
                <br />
                <span className="small">As of {moment(kept.keptAt, place)}</span>
              </span>
            </Link>
          </li>
        ))}
      </ul>
    </section>
  )
}

function nameOf({ kind, record, view }: KeptView): string {
  for (const entity of view.entities) {
    if (entity.id === record && (entity.kind === 'project' || entity.kind === 'shop'))
      return entity.name
  }
  return kind === 'shop' ? 'A shop' : 'A car'
}
