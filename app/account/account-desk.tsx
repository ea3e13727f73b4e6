'use client'
import Link from 'next/link'
import { useState } from 'react'
import * as z from 'zod/mini'
import { askServer, posting } from '@/app/_ui/door/ask-server.ts'
import { signOutHere } from '@/app/_ui/door/sign-in-with.ts'
import { Head, Notice } from '@/app/_ui/paper.tsx'
import { ThemePick } from '@/app/_ui/theme/theme-pick.tsx'
import type { Me } from '@/lib/command/wire.ts'
import { unsentCounts } from '@/lib/live/outbox/unsent-counts.ts'
import { forgetThisPerson } from '@/lib/live/phone/forget-person.ts'
import type { PersonId } from '@/lib/record/ids.ts'
import { BuzzPick } from './buzz-pick.tsx'
import { InstallCard } from './install-card.tsx'
import { OwnCodes } from './own-codes.tsx'

/** Where a person belongs, how their screens look, and the ways out. */
export function AccountDesk({ me }: { readonly me: Me }) {
  return (
    <div className="cols cols-2">
      <div className="stack">
        <section className="sheet stack">
          <Head title="Where you belong" />
          <ul className="ruled">
            {me.shops.map((shop) => (
              <li key={shop.id} className="rowend">
                <Link className="row-link" href={`/shops/${shop.id}`}>
                  {shop.name}
                </Link>
                <span className="small">{shop.role}</span>
              </li>
            ))}
            {me.projects.map((project) => (
              <li key={project.id} className="rowend">
                <Link className="row-link" href={`/p/${project.id}`}>
                  {project.name}
                </Link>
                <span className="small">
                  {project.partyName}
                  {project.lead ? ', lead' : ''}
                </span>
              </li>
            ))}
          </ul>
          {me.shops.length + me.projects.length === 0 && (
            <p className="soft">Nowhere yet. Whoever brings you in sends an invitation.</p>
          )}
        </section>
        <section className="sheet stack">
          <ThemePick />
          <BuzzPick />
        </section>
      </div>
      <div className="stack">
        <InstallCard />
        {me.shops.length > 0 && <OwnCodes />}
        <Ways person={me.person.id} />
        {me.demo && <EndDemonstration />}
      </div>
    </div>
  )
}

function Ways({ person }: { readonly person: PersonId }) {
  const [waiting, setWaiting] = useState(false)
  const [unsent, setUnsent] = useState<{ readonly count: number; readonly out: () => void }>()
  const [wrong, setWrong] = useState<string>()
  const everywhere = async () => {
    setWaiting(true)
    const answer = await askServer(z.unknown(), '/api/sign-out-everywhere', posting({}))
    if (answer.ok) {
      await forgetThisPerson()
      window.location.assign('/sign-in')
      return
    }
    setWaiting(false)
    setWrong(answer.message)
  }
  const here = async () => {
    setWaiting(true)
    await signOutHere()
    window.location.assign('/sign-in')
  }
  /** Whoever has presses on this phone is told first what becomes of them. */
  const asked = async (out: () => void) => {
    const theirs = (await unsentCounts()).find((one) => one.person === person)
    if (theirs === undefined) out()
    else setUnsent({ count: theirs.count, out })
  }
  if (unsent !== undefined) {
    return (
      <section className="sheet stack">
        <Head title="Sign out" />
        <Notice mark="unsent">
          <p>
            {unsent.count === 1 ? 'A press has' : `${unsent.count} presses have`} not been sent.{' '}
            {unsent.count === 1 ? 'It stays' : 'They stay'} on this phone for you until you sign in
            again.
          </p>
        </Notice>
        <Link className="btn btn-wide" prefetch={false} href="/unsent">
          Look at what is unsent
        </Link>
        <button
          type="button"
          className="btn btn-line btn-wide"
          disabled={waiting}
          onClick={unsent.out}
        >
          Sign out all the same
        </button>
        <button
          type="button"
          className="btn btn-line btn-wide"
          disabled={waiting}
          onClick={() => setUnsent(undefined)}
        >
          Stay signed in
        </button>
      </section>
    )
  }
  return (
    <section className="sheet stack">
      <Head title="Sign out" />
      <button
        type="button"
        className="btn btn-wide"
        disabled={waiting}
        onClick={() => void asked(() => void here())}
      >
        Sign out on this device
      </button>
      <button
        type="button"
        className="btn btn-line btn-wide"
        disabled={waiting}
        onClick={() => void asked(() => void everywhere())}
      >
        Sign out everywhere
      </button>
      <p className="small soft">
        Everywhere ends every session of yours at once: a lost phone, a shared desk.
      </p>
      {wrong !== undefined && (
        <p className="wrong" role="alert">
          {wrong}
        </p>
      )}
    </section>
  )
}

function EndDemonstration() {
  const [waiting, setWaiting] = useState(false)
  const [wrong, setWrong] = useState<string>()
  const end = async () => {
    setWaiting(true)
    const answer = await askServer(z.unknown(), '/api/installation/remove-demo', posting({}))
    if (answer.ok) {
      await forgetThisPerson()
      window.location.assign('/set-up')
      return
    }
    setWaiting(false)
    setWrong(answer.message)
  }
  return (
    <details className="sheet">
      <summary>End the demonstration</summary>
      <div id="end-demonstration" className="stack tight">
        <p>
          Removes the invented cars, shops and people, and their doors. Then this installation is
          empty and can be set up.
        </p>
        <button
          type="button"
          className="btn btn-line btn-wide"
          disabled={waiting}
          onClick={() => void end()}
        >
          Remove it all
        </button>
        {wrong !== undefined && (
          <p className="wrong" role="alert">
            {wrong}
          </p>
        )}
      </div>
    </details>
  )
}
