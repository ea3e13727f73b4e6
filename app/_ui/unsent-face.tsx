import Link from 'next/link'
import { Mark } from './mark.tsx'

/** How much of what was pressed here isn't sent, and since when; how much was refused on arrival; the way to sign in again, if need be. */
export function UnsentFace({
  waiting,
  refused,
  oldest,
  signsFirst,
  signIn,
}: {
  readonly waiting: number
  readonly refused: number
  /** Since when the oldest waits, in words. */
  readonly oldest: string
  /** Whose code is asked for before anything goes on. */
  readonly signsFirst?: string | undefined
  readonly signIn?: { readonly path: string; readonly words: string } | undefined
}) {
  return (
    <div className="unsent-line" role="status">
      <p className="rowmark">
        <Mark name={waiting > 0 ? 'unsent' : 'refused'} />
        <Link className="row-link" prefetch={false} href="/unsent">
          {waiting > 0 && `${waiting} unsent, the oldest ${oldest}`}
          {waiting > 0 && refused > 0 && '; '}
          {refused > 0 && `${refused} refused on arrival`}
        </Link>
      </p>
      {signsFirst !== undefined && (
        <p>
          <Link className="row-link" prefetch={false} href="/unsent">
            {signsFirst} signs first: what was pressed after it waits
          </Link>
        </p>
      )}
      {signIn !== undefined && (
        <p>
          <Link className="row-link" prefetch={false} href={signIn.path}>
            {signIn.words}
          </Link>
        </p>
      )}
    </div>
  )
}
