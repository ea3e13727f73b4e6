'use client'
import { useEffect, useRef } from 'react'
import { usePicture } from './use-picture.ts'

/** A photo with what stands under it. */
export interface ViewedPhoto {
  readonly address: string
  readonly caption: string
}

/** Photos one at a time over the whole screen: earlier and next by press or arrow key, back by press or Escape. */
export function PhotoViewer({
  photos,
  at,
  onMove,
  onClose,
}: {
  readonly photos: readonly ViewedPhoto[]
  readonly at: number
  readonly onMove: (at: number) => void
  readonly onClose: () => void
}) {
  const dialog = useRef<HTMLDialogElement>(null)
  useEffect(() => dialog.current?.showModal(), [])
  const photo = photos[at]
  if (photo === undefined) return null
  const to = (next: number) => {
    if (next >= 0 && next < photos.length) onMove(next)
  }
  return (
    <dialog
      ref={dialog}
      className="viewer"
      aria-label={photo.caption}
      onClose={onClose}
      onKeyDown={({ key }) => {
        if (key === 'ArrowLeft') to(at - 1)
        if (key === 'ArrowRight') to(at + 1)
      }}
    >
      <div className="viewer-picture">
        <WholePicture key={photo.address} photo={photo} />
      </div>
      <p className="viewer-words" aria-live="polite">
        {photo.caption}
      </p>
      <div className="viewer-presses">
        {photos.length > 1 && (
          <button type="button" className="btn" disabled={at === 0} onClick={() => to(at - 1)}>
            Earlier
          </button>
        )}
        {photos.length > 1 && (
          <button
            type="button"
            className="btn"
            disabled={at === photos.length - 1}
            onClick={() => to(at + 1)}
          >
            Next
          </button>
        )}
        <button type="button" className="btn" onClick={() => dialog.current?.close()}>
          Back
        </button>
      </div>
    </dialog>
  )
}

function WholePicture({ photo: { address, caption } }: { readonly photo: ViewedPhoto }) {
  const { isNone, image } = usePicture(address, 'whole')
  if (isNone) return <p>This photo could not be fetched. Open it again when there is signal.</p>
  return (
    // biome-ignore lint/performance/noImgElement: our own server gives the file as it is, and only to who may see it
    <img {...image} alt={caption} />
  )
}
