'use client'
import { type ReactNode, useEffect, useRef } from 'react'

/** A sheet that rises from the foot over what was there, and holds the keyboard until it is answered or let be. */
export function FootDialog({
  title,
  letBe,
  onClose,
  children,
}: {
  readonly title: string
  /** Words of the way back. */
  readonly letBe: string
  readonly onClose: () => void
  readonly children: ReactNode
}) {
  const dialog = useRef<HTMLDialogElement>(null)
  useEffect(() => {
    const shown = dialog.current
    shown?.showModal()
    return () => shown?.close()
  }, [])
  return (
    <dialog
      ref={dialog}
      className="foot-dialog"
      aria-label={title}
      onCancel={(event) => {
        event.preventDefault()
        onClose()
      }}
    >
      <div className="stack">
        <h2>{title}</h2>
        {children}
        <button type="button" className="btn btn-line btn-wide" onClick={onClose}>
          {letBe}
        </button>
      </div>
    </dialog>
  )
}
