import Link from 'next/link'

/** What stands where a link leads to nothing that this view sees. */
export function NotHere({ what, href }: { readonly what: string; readonly href: string }) {
  return (
    <section className="sheet stack">
      <h2>Nothing here</h2>
      <p>This {what} isn’t in the record, or it is not for your eyes. Nothing was changed.</p>
      <p>
        <Link className="btn btn-line" href={href}>
          Back
        </Link>
      </p>
    </section>
  )
}
