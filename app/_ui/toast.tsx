'use client'
import { createContext, type ReactNode, use, useCallback, useEffect, useRef, useState } from 'react'
import { ToastFace, type ToastWords } from './toast-face.tsx'

const ToastContext = createContext<((words: ToastWords) => void) | null>(null)

/** A toast with an undo must stay long enough for gloves, in ms. */
const STAYS_MS = 10_000
/** So many lines at the foot at once; the oldest without a way back makes room first. */
const MOST = 3

interface Shown {
  readonly id: number
  readonly words: ToastWords
}

/** With the newest: what can be taken back isn't pushed away by news that only says so. */
function withNewest(shown: readonly Shown[], next: Shown): readonly Shown[] {
  const kept = shown.filter(({ words }) => words.undo !== undefined)
  return [...kept, next].slice(-MOST)
}

/**
 * Says in lines at the foot what was done, each with the press that takes it back. They stay while a pointer or the focus is on them. F6
 * leads there and back again, Escape puts the line away.
 */
export function ToastProvider({ children }: { readonly children: ReactNode }) {
  const [shown, setShown] = useState<readonly Shown[]>([])
  const [stays, setStays] = useState(false)
  const count = useRef(0)
  const place = useRef<HTMLDivElement>(null)
  const cameFrom = useRef<Element | null>(null)

  const goBack = useCallback(() => {
    if (cameFrom.current instanceof HTMLElement && cameFrom.current.isConnected)
      cameFrom.current.focus()
    cameFrom.current = null
  }, [])
  const close = useCallback(
    (id: number) => {
      // What had the focus goes with the line: it returns to where it came from.
      if (place.current?.contains(document.activeElement) === true) goBack()
      setStays(false)
      setShown((all) => all.filter((one) => one.id !== id))
    },
    [goBack],
  )
  const show = useCallback(
    (words: ToastWords) => setShown((all) => withNewest(all, { id: ++count.current, words })),
    [],
  )

  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const here = place.current
      if (event.key !== 'F6' || here === null) return
      if (here.contains(document.activeElement)) {
        event.preventDefault()
        goBack()
        return
      }
      const [first] = here.querySelectorAll('button')
      if (first === undefined) return
      event.preventDefault()
      cameFrom.current = document.activeElement
      first.focus()
    }
    addEventListener('keydown', onKey)
    return () => removeEventListener('keydown', onKey)
  }, [goBack])

  return (
    <ToastContext value={show}>
      {children}
      <section
        ref={place}
        className="toast-place"
        aria-label="Just done"
        onPointerEnter={() => setStays(true)}
        onPointerLeave={() => setStays(false)}
        onFocus={() => setStays(true)}
        onBlur={() => setStays(false)}
      >
        <div role="status" className="toasts">
          {shown.map(({ id, words }) => (
            <Line key={id} words={words} stays={stays} onClose={() => close(id)} />
          ))}
        </div>
      </section>
    </ToastContext>
  )
}

/** One line, until its time is over; the time begins anew when nobody looks at it any more. */
function Line({
  words,
  stays,
  onClose,
}: {
  readonly words: ToastWords
  readonly stays: boolean
  readonly onClose: () => void
}) {
  const close = useRef(onClose)
  useEffect(() => {
    close.current = onClose
  })
  useEffect(() => {
    if (stays) return
    const timer = setTimeout(() => close.current(), STAYS_MS)
    return () => clearTimeout(timer)
  }, [stays])
  return <ToastFace words={words} onClose={onClose} />
}

/** Shows a toast. */
export function useToast(): (words: ToastWords) => void {
  const show = use(ToastContext)
  if (show === null) throw new Error('A screen stands outside ToastProvider.')
  return show
}
