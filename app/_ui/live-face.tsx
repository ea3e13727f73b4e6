import Link from 'next/link'
import type { ReactNode } from 'react'

/** The line under the plate: how fresh this is, the way out, what isn't sent, and what somebody else just did. */
export function LiveFace({
  says,
  unsent,
  said,
}: {
  readonly says: ReactNode
  readonly unsent?: ReactNode
  readonly said: ReactNode
}) {
  return (
    <div className="live-line small">
      <p role="status">{says}</p>
      <p className="live-ways">
        <Link className="row-link" prefetch={false} href="/scan">
          Scan a tag
        </Link>
        <Link className="row-link" prefetch={false} href="/account">
          Your account, sign out
        </Link>
      </p>
      {unsent}
      <p className="live-said" aria-live="polite">
        {said}
      </p>
    </div>
  )
}
