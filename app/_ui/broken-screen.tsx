'use client'
import { useEffect } from 'react'
import { Notice } from './paper.tsx'

/** In the place of a screen that broke: the fault is ours, the record is untouched. */
export function BrokenScreen({
  error,
  reset,
}: {
  readonly error: Error
  readonly reset: () => void
}) {
  useEffect(() => console.error(error), [error])
  return (
    <div className="stack">
      <Notice mark="refused" no>
        <p>
          <b>This screen could not be shown.</b> Nothing was changed.
        </p>
      </Notice>
      <div className="row">
        <button type="button" className="btn" onClick={reset}>
          Try again
        </button>
      </div>
    </div>
  )
}
