'use client'
import { usePicture } from './use-picture.ts'

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
  const { isNone, image } = usePicture(address, 'small', onPaper)
  if (isNone) return <span className="small">Open the document</span>
  return (
    // biome-ignore lint/performance/noImgElement: our own server gives the file as it is, and only to who may see it
    <img {...image} alt={caption} width={320} height={240} loading="lazy" decoding="async" />
  )
}
