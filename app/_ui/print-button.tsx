'use client'

/** Prints the page; what is no leaf stays off the paper. */
export function PrintButton({ label }: { readonly label: string }) {
  return (
    <button type="button" className="btn btn-line btn-wide" onClick={() => window.print()}>
      {label}
    </button>
  )
}
