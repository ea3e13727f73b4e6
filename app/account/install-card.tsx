'use client'
import { useSyncExternalStore } from 'react'
import { Head } from '@/app/_ui/paper.tsx'
import { installOffer } from '@/lib/live/service-worker/install-offer.ts'

const never = () => () => undefined

/** How Fettleyard comes among the phone's programs: by the browser's own question where it has one, else by its menu. */
export function InstallCard() {
  const offered = useSyncExternalStore(installOffer.subscribe, installOffer.isThere, () => false)
  const there = useSyncExternalStore(never, standsAlone, () => false)
  const secure = useSyncExternalStore(
    never,
    () => window.isSecureContext,
    () => true,
  )
  return (
    <section className="sheet stack">
      <Head title="On this phone" />
      {there ? (
        <p>Fettleyard stands among the programs of this phone, and opens without a network.</p>
      ) : offered ? (
        <button type="button" className="btn btn-wide" onClick={() => void installOffer.take()}>
          Put Fettleyard on this phone
        </button>
      ) : secure ? (
        <p>
          <b>Put Fettleyard on this phone:</b> open the browser’s menu and choose <i>Install</i> or{' '}
          <i>Add to home screen</i>. Where the browser has a share key, that choice is behind it.
        </p>
      ) : (
        <p>
          This address is not a secure one, so it can’t be put on a phone nor read without a
          network. Whoever keeps this installation can give it an address that begins with https.
        </p>
      )}
      <p className="small soft">
        Then it opens like any other program, straight on your day sheet or your car.
      </p>
    </section>
  )
}

const standsAlone = (): boolean => window.matchMedia('(display-mode: standalone)').matches
