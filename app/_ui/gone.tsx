import Link from 'next/link'
import { ErrorState } from './paper.tsx'

/** In the place of a record that this person may not see, or no longer. */
export const Gone = ({ what }: { readonly what: 'project' | 'shop' }) => (
  <ErrorState title={`You have no part in this ${what}.`}>
    <p>
      It may have been taken away, or you are signed in as somebody else. Whoever invited you can
      bring you in again.
    </p>
    <div className="row">
      <Link className="btn" href="/">
        My projects
      </Link>
      <Link className="btn btn-line" href="/sign-in?again=1">
        Sign in as somebody else
      </Link>
    </div>
  </ErrorState>
)
