'use client'
import { useState } from 'react'
import * as z from 'zod/mini'
import { askServer, posting } from '@/app/_ui/door/ask-server.ts'
import { Head } from '@/app/_ui/paper.tsx'
import { ThemePick } from '@/app/_ui/theme/theme-pick.tsx'
import { learnShopPhone } from '@/lib/live/shop-phone/shop-phone.ts'

/** What stands in place of an account on a shop's phone: nobody has one here. And the way out. */
export function PhoneAccount({ name, demo }: { readonly name: string; readonly demo: boolean }) {
  const [waiting, setWaiting] = useState(false)
  const [wrong, setWrong] = useState<string>()
  const leave = async () => {
    setWaiting(true)
    const answer = await askServer(z.unknown(), '/api/device/leave', posting({}))
    if (answer.ok) {
      learnShopPhone(null)
      window.location.assign('/sign-in')
      return
    }
    setWaiting(false)
    setWrong(answer.message)
  }
  return (
    <div className="cols cols-2">
      <section className="sheet stack">
        <Head title="Nobody is signed in here" />
        <p>
          This phone is the shop’s. Whoever works at it taps the name on its plate; their own
          account they open on their own phone.
        </p>
        <details>
          <summary>Take {name} out of the shop</summary>
          <div className="stack tight">
            <p>
              {demo
                ? `This browser is ${name} no longer. In the demonstration one press brings it back.`
                : `${name} is the shop’s no longer. To bring it in again a manager makes a link.`}
            </p>
            <button
              type="button"
              className="btn btn-line btn-wide"
              disabled={waiting}
              onClick={() => void leave()}
            >
              {demo ? `Leave ${name}` : `Take ${name} out`}
            </button>
          </div>
        </details>
        {wrong !== undefined && (
          <p className="wrong" role="alert">
            {wrong}
          </p>
        )}
      </section>
      <section className="sheet stack">
        <ThemePick />
      </section>
    </div>
  )
}
