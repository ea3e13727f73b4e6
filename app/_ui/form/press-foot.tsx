'use client'
import type { ReactNode } from 'react'
import { Outcome } from '@/app/_ui/press/outcome.tsx'
import type { Press } from './use-press.ts'

/** The end of a form: what refused it, the one press, and what it will do. */
export function PressFoot({
  press,
  label,
  note,
  lined,
  disabled,
}: {
  readonly press: Press
  readonly label: ReactNode
  readonly note?: ReactNode
  /** A lesser press: lined, not black. */
  readonly lined?: boolean
  readonly disabled?: boolean
}) {
  return (
    <>
      <Outcome press={press.command} />
      <button
        type="submit"
        className={`btn btn-wide ${lined === true ? 'btn-line' : ''}`}
        disabled={press.waiting || disabled === true}
      >
        {press.waiting ? 'Sending…' : label}
      </button>
      {note !== undefined && <p className="small soft">{note}</p>}
    </>
  )
}
