'use client'
import { useState } from 'react'
import * as z from 'zod/mini'
import { askServer, posting } from '@/app/_ui/door/ask-server.ts'
import type { Installation } from '@/lib/command/wire-access.ts'

const Opened = z.object({ shop: z.string() })

/** One press makes this browser the demonstration's phone of a shop; what its hands sign with stands beside it. */
export function DemoPhone({ phone }: { readonly phone: NonNullable<Installation['demoPhone']> }) {
  const [waiting, setWaiting] = useState(false)
  const [wrong, setWrong] = useState<string>()
  const open = async () => {
    setWaiting(true)
    setWrong(undefined)
    const answer = await askServer(Opened, '/api/installation/demo-phone', posting({}))
    if (answer.ok) {
      window.location.assign(`/shops/${answer.data.shop}`)
      return
    }
    setWaiting(false)
    setWrong(answer.message)
  }
  return (
    <section className="sheet stack" aria-label="A phone that hands share">
      <div className="head">
        <h2>A phone that hands share</h2>
        <span className="n">{phone.shopName}</span>
      </div>
      <p>
        It stays signed in for the shop and shows no money. A tap on its plate says who works at it;
        a signature takes the hand’s own code.
      </p>
      <button
        type="button"
        className="btn btn-line btn-wide"
        disabled={waiting}
        onClick={() => void open()}
      >
        {waiting ? 'Opening…' : `Open as the ${phone.name.toLowerCase()}`}
      </button>
      <dl className="facts">
        {phone.hands.map(({ name, code }) => (
          <div key={name} className="contents">
            <dt>{name} signs with</dt>
            <dd>{code}</dd>
          </div>
        ))}
      </dl>
      {wrong !== undefined && (
        <p className="wrong" role="alert">
          {wrong}
        </p>
      )}
    </section>
  )
}
