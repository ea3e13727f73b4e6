'use client'
import { createContext, type ReactNode, use, useCallback, useEffect, useState } from 'react'
import { ToastFace, type ToastWords } from './toast-face.tsx'

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
        {words !== null && <ToastFace words={words} onClose={() => setWords(null)} />}
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
