'use client'
import { useState } from 'react'
import * as z from 'zod/mini'
import { askServer, posting } from '@/app/_ui/door/ask-server.ts'
import type { PhoneLink } from '@/lib/command/wire-device.ts'

const Became = z.object({ shop: z.string() })

/** One press, and this phone is the shop's. */
export function BecomePhone({ token, link }: { readonly token: string; readonly link: PhoneLink }) {
  const [waiting, setWaiting] = useState(false)
  const [wrong, setWrong] = useState<string>()
  const become = async () => {
    setWaiting(true)
    setWrong(undefined)
    const answer = await askServer(Became, `/api/phone-links/${token}`, posting({}))
    if (answer.ok) {
      window.location.assign(`/shops/${answer.data.shop}`)
      return
    }
    setWaiting(false)
    setWrong(answer.message)
  }
  return (
    <section className="sheet stack">
      <p>
        From now on this phone is <b>{link.name}</b>: it stays signed in for {link.shopName} and
        shows no money. Whoever works at it taps their name; a signature takes their own code.
      </p>
      <p>Whoever is signed in on it as themselves is signed out.</p>
      <button
        type="button"
        className="btn btn-wide"
        disabled={waiting}
        onClick={() => void become()}
      >
        {waiting ? 'One moment…' : 'Yes, this is the shop’s phone'}
      </button>
      {wrong !== undefined && (
        <p className="wrong" role="alert">
          {wrong}
        </p>
      )}
    </section>
  )
}
