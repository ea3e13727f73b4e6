'use client'
import { useEffect, useRef, useState } from 'react'
import { keepFile } from '@/lib/live/files/keep-file.ts'
import { openPhotoBench, prepareAside } from '@/lib/live/photo/prepare-aside.ts'
import type { Prepared } from '@/lib/live/photo/prepare-photo.ts'
import type { PersonId } from '@/lib/record/ids.ts'
import type { ListChange } from './use-field-files.ts'

/** Greatest file that the server keeps, in bytes. */
const MOST_BYTES = 30_000_000

/** Where what is chosen belongs. */
interface ChosenFor {
  readonly folder: string
  readonly person: PersonId | null
  readonly use: string
}

/** Photos on their way from the camera to the phone's shelf. */
export interface Choosing {
  /** Which of how many is made ready now. */
  readonly making: { readonly n: number; readonly of: number } | null
  /** What could not be taken, each with the way out. */
  readonly wrong: readonly string[]
  readonly choose: (chosen: readonly File[], keepPlace: boolean) => Promise<void>
  /** Leaves out those that aren't ready yet. */
  readonly stop: () => void
}

/** Makes what is chosen ready to be sent, one after another, and keeps it on this phone. */
export function useChoose(
  { folder, person, use }: ChosenFor,
  onChange: (change: ListChange) => void,
): Choosing {
  const [making, setMaking] = useState<Choosing['making']>(null)
  const [wrong, setWrong] = useState<readonly string[]>([])
  const round = useRef(0)
  useEffect(openPhotoBench, [])

  const stop = () => {
    round.current += 1
    setMaking(null)
  }
  const choose = async (chosen: readonly File[], keepPlace: boolean) => {
    round.current += 1
    const mine = round.current
    setWrong([])
    for (const [n, file] of chosen.entries()) {
      setMaking({ n: n + 1, of: chosen.length })
      const prepared = await prepareAside(file, keepPlace)
      if (round.current !== mine) return
      const fault = faultOf(prepared, file.name)
      if (prepared.is === 'ready' && fault === null) {
        const { bytes, thumb } = prepared
        const sha256 = await keepFile({ folder, person, name: file.name, bytes, thumb, use })
        onChange((there) => [...new Set([...there, sha256])])
      } else if (fault !== null) setWrong((before) => [...before, fault])
    }
    if (round.current === mine) setMaking(null)
  }
  return { making, wrong, choose, stop }
}

function faultOf(prepared: Prepared, name: string): string | null {
  if (prepared.is === 'ready')
    return prepared.bytes.size > MOST_BYTES
      ? `${name} is larger than 30 MB. Save it smaller, or in parts.`
      : null
  switch (prepared.why) {
    case 'heic':
      return `${name} is a HEIC picture, which this browser can’t read. Press “Take a photo” here, set the phone’s camera to save JPEG, or save this one as JPEG.`
    case 'damaged':
      return `${name} can’t be read as a picture. Open it on this phone and save it again, or take it anew.`
    case 'unknown':
      return `${name} is no picture and no PDF. Pictures (JPEG, PNG, WebP) and PDF are kept.`
  }
}
