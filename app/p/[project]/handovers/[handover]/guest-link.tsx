'use client'
import { useState } from 'react'
import { askServer, posting } from '@/app/_ui/door/ask-server.ts'
import { HandedLink, LinkToHand } from '@/app/_ui/form/link-to-hand.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import type { Handover } from '@/lib/record/entities/things.ts'
import { moment } from '@/lib/words/dates.ts'
import { partyName } from '@/lib/words/names.ts'
import { whatMoves } from '../handover-facts.ts'

/** A link and a QR code with which somebody without an account receives this handover, by name, count and finger. */
export function GuestLink({ handover }: { readonly handover: Handover }) {
  const { record, reader } = useDesk()
  const [link, setLink] = useState<HandedLink>()
  const [wrong, setWrong] = useState<string>()
  const [waiting, setWaiting] = useState(false)

  const make = async () => {
    setWaiting(true)
    const answer = await askServer(HandedLink, `/api/handovers/${handover.id}/link`, posting({}))
    setWaiting(false)
    if (answer.ok) setLink(answer.data)
    else setWrong(answer.message)
  }

  return (
    <section className="sheet stack no-print">
      <div className="head">
        <h2>Nobody there with an account?</h2>
      </div>
      <p>
        Whoever takes {whatMoves(handover, record, reader.locale)} for{' '}
        {partyName(handover.to, record)} can receive it on their own phone: by name, count, photo
        and a signature.
      </p>
      {link === undefined ? (
        <button type="button" className="btn btn-line btn-wide" disabled={waiting} onClick={make}>
          {waiting ? 'Making the link…' : 'Make a link and a QR code'}
        </button>
      ) : (
        <LinkToHand
          link={link}
          says="QR code of the link with which the receiver signs"
          until={moment(link.expiresAt, reader)}
        />
      )}
      {wrong !== undefined && (
        <p className="wrong" role="alert">
          {wrong}
        </p>
      )}
    </section>
  )
}
