'use client'
import { useEffect, useRef, useState } from 'react'

/** How much of a picture is shown: in a frame of its link, or over the whole screen. */
type Size = 'small' | 'whole'

/** What an `img` is given to show a picture, and whether there is none to show. */
export interface ShownPicture {
  readonly isNone: boolean
  readonly image: {
    readonly src: string
    readonly ref: (image: HTMLImageElement | null) => void
    readonly onError: () => void
  }
}

/** A picture from the server; one that the server hasn't got yet, or can't be asked for, from this phone where it waits. */
export function usePicture(address: string, size: Size, onNone?: () => void): ShownPicture {
  const [isNone, setNone] = useState(false)
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
    const found = onPhone === null ? await pictureOnPhone(address, size) : null
    if (found !== null) {
      setOnPhone(found)
      return
    }
    setNone(true)
    onNone?.()
  }
  return {
    isNone,
    image: {
      src: onPhone ?? address,
      ref(image) {
        // It may have failed before there was anybody to hear it.
        if (image?.complete === true && image.naturalWidth === 0 && !isNone) void missed()
      },
      onError: () => void missed(),
    },
  }
}

/** The address of a picture that waits on this phone for its upload; null where there is none. */
async function pictureOnPhone(address: string, size: Size): Promise<string | null> {
  try {
    const { fileOnPhone } = await import('@/lib/live/files/file-shelf.ts')
    const file = await fileOnPhone(address)
    // A paper has no small picture.
    if (file === undefined || file.thumb === null) return null
    const shown = size === 'small' ? file.thumb : (file.bytes ?? file.thumb)
    return URL.createObjectURL(shown)
  } catch {
    return null
  }
}
