'use client'
import { useEffect } from 'react'
import { isPartMissing } from '@/lib/live/service-worker/part-missing.ts'
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
  const missing = isPartMissing(error)
  return (
    <div className="stack">
      <Notice mark="refused" no>
        <p>
          <b>
            {missing
              ? 'A part of this screen could not be fetched.'
              : 'This screen could not be shown.'}
          </b>{' '}
          Nothing was changed.
        </p>
      </Notice>
      <div className="row">
        <button
          type="button"
          className="btn"
          onClick={missing ? () => window.location.reload() : reset}
        >
          {missing ? 'Load the page anew' : 'Try again'}
        </button>
      </div>
    </div>
  )
}
