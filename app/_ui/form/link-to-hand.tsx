'use client'
import { useState } from 'react'
import * as z from 'zod/mini'
import { Instant } from '@/lib/record/scalars.ts'

/** A link that the server made to be handed over (lib/command/wire-access.ts). */
export const HandedLink = z.object({
  url: z.string(),
  qr: z.string(),
  mailed: z.boolean(),
  expiresAt: Instant,
})
export type HandedLink = z.infer<typeof HandedLink>

/** The link in words, to copy or share, and its QR code to hold up to somebody's phone. */
export function LinkToHand({
  link,
  says,
  until,
}: {
  readonly link: HandedLink
  readonly says: string
  readonly until: string
}) {
  const [copied, setCopied] = useState<string>()
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(link.url)
      setCopied('Copied. Paste it into a message.')
    } catch {
      setCopied('This browser would not copy it: select the link above and copy it by hand.')
    }
  }
  return (
    <div className="stack tight">
      {/* biome-ignore lint/performance/noImgElement: a picture made by the server, in the page itself */}
      <img className="qr" src={`data:image/svg+xml,${encodeURIComponent(link.qr)}`} alt={says} />
      <p className="link-text">
        <a href={link.url}>{link.url}</a>
      </p>
      <p className="small">
        {link.mailed ? 'It goes by mail as well. ' : ''}Good until {until}. Whoever has the link can
        use it: hand it to nobody else.
      </p>
      <button type="button" className="btn btn-line" onClick={copy}>
        Copy the link
      </button>
      <p className="small" aria-live="polite">
        {copied}
      </p>
    </div>
  )
}
