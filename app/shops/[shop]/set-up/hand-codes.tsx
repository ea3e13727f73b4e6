'use client'
import { useState } from 'react'
import * as z from 'zod/mini'
import { askServer, posting } from '@/app/_ui/door/ask-server.ts'
import { Head } from '@/app/_ui/paper.tsx'
import type { ShopPhones } from '@/lib/command/wire-device.ts'
import { useShop } from '@/lib/live/shop-provider.tsx'
import type { ShopId } from '@/lib/record/ids.ts'
import { Instant } from '@/lib/record/scalars.ts'
import { since, timeOfDay } from '@/lib/words/dates.ts'

const Once = z.object({ once: z.string(), until: Instant })
type Hand = ShopPhones['hands'][number]

/** Who has a code to sign with. A manager takes one away, and shows one that works once; nobody reads one. */
export function HandCodes({
  shop,
  hands,
  onChange,
}: {
  readonly shop: ShopId
  readonly hands: readonly Hand[]
  readonly onChange: () => void
}) {
  return (
    <section className="sheet stack">
      <Head
        title="Codes to sign with"
        note={`${hands.filter(({ hasCode }) => hasCode).length} of ${hands.length}`}
      />
      <p>
        Everybody sets their own under their account. Or you show them one that works once: with it
        they set their own on the shop’s phone.
      </p>
      <ul className="ruled">
        {hands.map((hand) => (
          <CodeRow key={hand.person} shop={shop} hand={hand} onChange={onChange} />
        ))}
      </ul>
    </section>
  )
}

function CodeRow({
  shop,
  hand,
  onChange,
}: {
  readonly shop: ShopId
  readonly hand: Hand
  readonly onChange: () => void
}) {
  const { place } = useShop()
  const [once, setOnce] = useState<z.infer<typeof Once>>()
  const [wrong, setWrong] = useState<string>()
  const [waiting, setWaiting] = useState(false)
  const show = async () => {
    setWaiting(true)
    setWrong(undefined)
    const path = `/api/shops/${shop}/hands/${hand.person}/code`
    const answer = await askServer(Once, path, posting({}))
    setWaiting(false)
    if (!answer.ok) {
      setWrong(answer.message)
      return
    }
    setOnce(answer.data)
    onChange()
  }
  return (
    <li className="stack tight">
      <p>
        <b>{hand.name}</b>
        <span className="small">
          {' '}
          · {hand.setAt === null ? 'no code yet' : `has a code, ${since(hand.setAt, place)}`}
        </span>
      </p>
      {once !== undefined && (
        <p role="status">
          Tell {hand.name}: <b className="big num-once">{once.once}</b>
          <br />
          <span className="small">
            Works once, until {timeOfDay(once.until, place)}. It isn’t shown again.
          </span>
        </p>
      )}
      <details>
        <summary>{hand.hasCode ? 'They forgot it' : 'Show one that works once'}</summary>
        <div className="stack tight">
          {hand.hasCode && <p>Theirs stops working at once; they set another.</p>}
          <button
            type="button"
            className="btn btn-line"
            disabled={waiting}
            onClick={() => void show()}
          >
            {hand.hasCode ? `Take ${hand.name}’s code away` : `A code for ${hand.name}`}
          </button>
        </div>
      </details>
      {wrong !== undefined && (
        <p className="wrong" role="alert">
          {wrong}
        </p>
      )}
    </li>
  )
}
