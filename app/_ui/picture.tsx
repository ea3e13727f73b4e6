'use client'
import { useState } from 'react'

/** A kept picture in the frame of its link. What shows no picture is a paper: the link around it opens it. */
export function Picture({
  address,
  caption,
  onPaper,
}: {
  readonly address: string
  readonly caption: string
  readonly onPaper?: () => void
}) {
  const [isPaper, setPaper] = useState(false)
  const paper = () => {
    setPaper(true)
    onPaper?.()
  }
  if (isPaper) return <span className="small">Open the document</span>
  return (
    // biome-ignore lint/performance/noImgElement: our own server gives the file as it is, and only to who may see it
    <img
      src={address}
      alt={caption}
      width={320}
      height={240}
      loading="lazy"
      decoding="async"
      ref={(image) => {
        // It may have failed before there was anybody to hear it.
        if (image?.complete === true && image.naturalWidth === 0 && !isPaper) paper()
      }}
      onError={paper}
    />
  )
}
