'use client'
import { useEffect, useState } from 'react'
import { Mark, type MarkName } from '@/app/_ui/mark.tsx'
import { Picture } from '@/app/_ui/picture.tsx'
import type { WaitingFile } from '@/lib/live/phone/phone-store.ts'

/** One file of a field: its picture, how far it is in words, and the press that leaves it out. */
export function ChosenFile({
  caption,
  address,
  isThere,
  onPhone,
  sent,
  goes,
  number,
  onLeaveOut,
}: {
  readonly caption: string
  /** Where the server has it. */
  readonly address: string
  /** The server has it, and this phone no more. */
  readonly isThere: boolean
  /** As it lies on this phone; nothing where only the server has it. */
  readonly onPhone: WaitingFile | undefined
  /** How far it is on its way, 0 to 1. */
  readonly sent: number | undefined
  /** There is a signal and a session to send it with. */
  readonly goes: boolean
  readonly number: number
  readonly onLeaveOut: () => void
}) {
  const thumb = useObjectUrl(onPhone?.thumb ?? null)
  const whole = useObjectUrl(onPhone?.bytes ?? null)
  const { mark, words } =
    onPhone === undefined && !isThere
      ? { mark: 'waiting' as const, words: 'One moment…' }
      : stateOf(onPhone, sent, goes)
  const isPaper = onPhone !== undefined && onPhone.thumb === null
  return (
    <li className="stack tight">
      <a href={whole ?? address} className="photo" target="_blank" rel="noreferrer">
        {isPaper ? (
          <span className="small">{onPhone.name}</span>
        ) : (
          (isThere || thumb !== null) && <Picture address={thumb ?? address} caption={caption} />
        )}
      </a>
      <p className="small chosen-state">
        <Mark name={mark} /> {words}
      </p>
      {onPhone?.no !== null && onPhone?.no !== undefined && <p className="wrong">{onPhone.no}</p>}
      <button type="button" className="btn btn-line" onClick={onLeaveOut}>
        Leave {number} out
      </button>
    </li>
  )
}

function stateOf(
  onPhone: WaitingFile | undefined,
  sent: number | undefined,
  goes: boolean,
): { readonly mark: MarkName; readonly words: string } {
  if (onPhone === undefined || onPhone.bytes === null) return { mark: 'met', words: 'Arrived' }
  if (onPhone.no !== null) return { mark: 'refused', words: 'Not taken' }
  if (sent === undefined || sent === 0) return { mark: 'unsent', words: 'Kept on this phone' }
  const per = `${Math.floor(sent * 100)} %`
  return { mark: 'unsent', words: goes ? `Sending, ${per}` : `Kept on this phone, ${per} sent` }
}

/** An address of this tab's own for bytes on the phone; null before it is there, and where there are none. */
function useObjectUrl(bytes: Blob | null): string | null {
  const [url, setUrl] = useState<string | null>(null)
  useEffect(() => {
    if (bytes === null) return
    const made = URL.createObjectURL(bytes)
    setUrl(made)
    return () => {
      setUrl(null)
      URL.revokeObjectURL(made)
    }
  }, [bytes])
  return url
}
