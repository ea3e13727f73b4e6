'use client'
import { useEffect, useRef, useState } from 'react'

/**
 * A kept picture in the frame of its link; one that the server hasn't got yet is shown from this phone. What shows no picture is a
 * paper: the link around it opens it.
 */
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
  const [onPhone, setOnPhone] = useState<string | null>(null)
  const asked = useRef(false)
  useEffect(
    () => () => {
      if (onPhone !== null) URL.revokeObjectURL(onPhone)
    },
    [onPhone],
  )
  const missed = async () => {
    if (asked.current && onPhone === null) return
    asked.current = true
    const found = onPhone === null ? await pictureOnPhone(address) : null
    if (found !== null) {
      setOnPhone(found)
      return
    }
    setPaper(true)
    onPaper?.()
  }
  if (isPaper) return <span className="small">Open the document</span>
  return (
    // biome-ignore lint/performance/noImgElement: our own server gives the file as it is, and only to who may see it
    <img
      src={onPhone ?? address}
      alt={caption}
      width={320}
      height={240}
      loading="lazy"
      decoding="async"
      ref={(image) => {
        // It may have failed before there was anybody to hear it.
        if (image?.complete === true && image.naturalWidth === 0 && !isPaper) void missed()
      }}
      onError={() => void missed()}
    />
  )
}

/** The address of a picture that waits on this phone for its upload; null where there is none. */
async function pictureOnPhone(address: string): Promise<string | null> {
  try {
    const { fileOnPhone } = await import('@/lib/live/files/file-shelf.ts')
    const file = await fileOnPhone(address)
    const bytes = file?.thumb ?? file?.bytes ?? null
    return bytes === null || file?.thumb === null ? null : URL.createObjectURL(bytes)
  } catch {
    return null
  }
}
