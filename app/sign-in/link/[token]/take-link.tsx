'use client'
import Link from 'next/link'
import { useState } from 'react'
import { signInWith } from '@/app/_ui/door/sign-in-with.ts'

/** One press takes the link, and leads on. */
export function TakeLink({ token, way }: { readonly token: string; readonly way: string }) {
  const [wrong, setWrong] = useState<string>()
  const [waiting, setWaiting] = useState(false)
  const take = async () => {
    setWaiting(true)
    const said = await signInWith('link', { token })
    if (said === null) {
      window.location.assign(way)
      return
    }
    setWaiting(false)
    setWrong(said)
  }
  return (
    <section className="sheet stack">
      <button type="button" className="btn btn-wide" disabled={waiting} onClick={() => void take()}>
        {waiting ? 'Signing in…' : 'Sign in with this link'}
      </button>
      {wrong !== undefined && (
        <>
          <p className="wrong" role="alert">
            {wrong}
          </p>
          <p>
            <Link className="btn btn-line" href={`/sign-in?next=${encodeURIComponent(way)}`}>
              Back to sign-in
            </Link>
          </p>
        </>
      )}
    </section>
  )
}
