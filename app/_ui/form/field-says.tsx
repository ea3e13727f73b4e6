'use client'
import type { Choosing } from './use-choose.ts'
import type { FieldFiles } from './use-field-files.ts'

/** How the photos of a field stand: made ready, on their way, kept here until there is a signal, or not taken and why. */
export function FieldSays({
  id,
  held,
  choosing,
}: {
  readonly id: string
  readonly held: FieldFiles
  readonly choosing: Choosing
}) {
  const { making, wrong, stop } = choosing
  return (
    <div id={id} className="stack tight">
      {making !== null && (
        <div className="row">
          <p role="status">
            {making.of === 1
              ? 'Making the photo ready…'
              : `Making photo ${making.n} of ${making.of} ready…`}
          </p>
          <button type="button" className="btn btn-line btn-small" onClick={stop}>
            Stop
          </button>
        </div>
      )}
      <p className="hint" role="status">
        {onTheWay(held)}
      </p>
      {wrong.map((message) => (
        <p key={message} className="wrong" role="alert">
          {message}
        </p>
      ))}
    </div>
  )
}

/** In words, without the figures that move: they stand under each photo. */
function onTheWay({ shelf, waitsFor, progress }: FieldFiles): string {
  const unsent = shelf.filter(({ bytes, no }) => bytes !== null && no === null)
  const count = unsent.length === 1 ? '1 photo' : `${unsent.length} photos`
  if (unsent.length === 0) return ''
  if (waitsFor === 'signal') return `${count} kept on this phone, sent when there is a signal.`
  if (waitsFor === 'session')
    return `${count} kept on this phone, sent when you are signed in again.`
  const goes = unsent.find(({ address }) => progress.has(address)) ?? unsent[0]
  const n = shelf.findIndex(({ address }) => address === goes?.address) + 1
  return `Sending photo ${n} of ${shelf.length}.`
}
