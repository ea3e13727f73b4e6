'use client'
import { createContext, type ReactNode, use, useCallback, useEffect, useState } from 'react'
import { Mark, type MarkName } from './mark.tsx'

/** What a toast says, and the press that takes it back. */
export interface ToastWords {
  readonly text: string
  readonly mark?: MarkName
  readonly undo?: { readonly label: string; readonly press: () => void }
}

const ToastContext = createContext<((words: ToastWords) => void) | null>(null)

/** A toast with an undo must stay long enough for gloves, in ms. */
const STAYS_MS = 10_000

/** Says in a line at the foot what was done, with a press that takes it back. */
export function ToastProvider({ children }: { readonly children: ReactNode }) {
  const [words, setWords] = useState<ToastWords | null>(null)
  useEffect(() => {
    if (words === null) return
    const timer = setTimeout(() => setWords(null), STAYS_MS)
    return () => clearTimeout(timer)
  }, [words])
  const show = useCallback((next: ToastWords) => setWords(next), [])
  return (
    <ToastContext value={show}>
      {children}
      <div className="toast-place" role="status">
        {words !== null && (
          <div className="toast">
            <Mark name={words.mark ?? 'met'} />
            <p>{words.text}</p>
            {words.undo !== undefined && (
              <button
                type="button"
                className="btn btn-line"
                onClick={() => {
                  words.undo?.press()
                  setWords(null)
                }}
              >
                {words.undo.label}
              </button>
            )}
            <button type="button" className="toast-away" onClick={() => setWords(null)}>
              Close
            </button>
          </div>
        )}
      </div>
    </ToastContext>
  )
}

/** Shows a toast. */
export function useToast(): (words: ToastWords) => void {
  const show = use(ToastContext)
  if (show === null) throw new Error('A screen stands outside ToastProvider.')
  return show
}
