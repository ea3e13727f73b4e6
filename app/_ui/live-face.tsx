import Link from 'next/link'
import type { ReactNode } from 'react'

/** The line under the plate: how fresh this is, the way out, what isn't sent, and what somebody else just did. */
export function LiveFace({
  says,
  unsent,
  said,
  account = 'Your account, sign out',
}: {
  readonly says: ReactNode
  readonly unsent?: ReactNode
  readonly said: ReactNode
  /** What the way out is called. */
  readonly account?: string | undefined
}) {
  return (
    <div className="live-line small">
      <p role="status">{says}</p>
      <p className="live-ways">
        <Link className="row-link" prefetch={false} href="/scan">
          Scan a tag
        </Link>
        <Link className="row-link" prefetch={false} href="/account">
          {account}
        </Link>
      </p>
      {unsent}
      <p className="live-said" aria-live="polite">
        {said}
      </p>
    </div>
  )
}
