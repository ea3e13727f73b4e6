'use client'
import { type ReactNode, type RefObject, useEffect, useRef } from 'react'

/** Pause after which a typed letter begins a new word, in ms. */
const WORD_MS = 700

const PRESSABLE = 'a[href], button:not([disabled]), summary'

/** What the arrow keys stop at in a row: its first link or press. */
const stopOf = (row: Element): HTMLElement | null => row.querySelector<HTMLElement>(PRESSABLE)

const rowsOf = (list: Element): HTMLElement[] =>
  [...list.children].flatMap((row) => stopOf(row) ?? [])

/** Fields have keys of their own. */
const types = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.closest('input, textarea, select') !== null

/**
 * Arrow keys, Home, End and the first letters of a name lead through a list's rows; Tab goes on as ever. A live change never moves what
 * has the focus; where it takes that row away, the next one has it.
 */
export function useRowKeys(list: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const here = list.current
    if (here === null) return
    let word = ''
    let typedAt = 0
    let last: { readonly element: HTMLElement; readonly at: number } | null = null

    const at = () => rowsOf(here).findIndex((stop) => stop.parentElement !== null && rowHolds(stop))
    const rowHolds = (stop: HTMLElement): boolean => {
      const row = [...here.children].find((child) => child.contains(stop))
      return row?.contains(document.activeElement) === true
    }
    const onKey = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || types(event.target)) return
      const stops = rowsOf(here)
      const now = at()
      const to = target(event, stops, now)
      if (to === undefined) return
      event.preventDefault()
      to.focus()
    }
    const target = (
      event: KeyboardEvent,
      stops: readonly HTMLElement[],
      now: number,
    ): HTMLElement | undefined => {
      switch (event.key) {
        case 'ArrowDown':
          return stops[now + 1]
        case 'ArrowUp':
          return stops[now - 1]
        case 'Home':
          return stops[0]
        case 'End':
          return stops.at(-1)
        default:
          return event.key.length === 1 && event.key !== ' '
            ? named(event.key, stops, now)
            : undefined
      }
    }
    const named = (key: string, stops: readonly HTMLElement[], now: number) => {
      const ms = performance.now()
      word = ms - typedAt > WORD_MS ? key : word + key
      typedAt = ms
      const wanted = word.toLowerCase()
      // One letter goes on to the next of its kind; a longer word stays where it fits.
      const from = wanted.length === 1 ? now + 1 : now
      const inTurn = [...stops.slice(Math.max(0, from)), ...stops.slice(0, Math.max(0, from))]
      return inTurn.find((stop) => begins(stop.textContent ?? '', wanted))
    }
    const onFocus = (event: FocusEvent) => {
      if (event.target instanceof HTMLElement) last = { element: event.target, at: at() }
    }
    const onBlur = (event: FocusEvent) => {
      // Where it goes somewhere, somebody moved it; where it goes nowhere, the row may have been taken from under it.
      if (event.relatedTarget !== null) last = null
    }
    const onPointer = () => {
      last = null
    }
    const observer = new MutationObserver(() => {
      if (last === null || document.activeElement !== document.body) return
      const { element, at: was } = last
      const stops = rowsOf(here)
      const next = element.isConnected ? element : (stops[was] ?? stops.at(-1))
      next?.focus({ preventScroll: element.isConnected })
    })
    here.addEventListener('keydown', onKey)
    here.addEventListener('focusin', onFocus)
    here.addEventListener('focusout', onBlur)
    document.addEventListener('pointerdown', onPointer, true)
    observer.observe(here, { childList: true })
    return () => {
      here.removeEventListener('keydown', onKey)
      here.removeEventListener('focusin', onFocus)
      here.removeEventListener('focusout', onBlur)
      document.removeEventListener('pointerdown', onPointer, true)
      observer.disconnect()
    }
  }, [list])
}

/** A row's words, or those after its number, begin so. */
function begins(text: string, wanted: string): boolean {
  const words = text.trim().toLowerCase()
  return words.startsWith(wanted) || words.replace(/^\d+\s*·?\s*/, '').startsWith(wanted)
}

/** A list whose rows the arrow keys lead through; `ordered` where their order says something. */
export function RowList({
  className,
  ordered,
  children,
}: {
  readonly className: string
  readonly ordered?: boolean
  readonly children: ReactNode
}) {
  const list = useRef<HTMLElement | null>(null)
  useRowKeys(list)
  const take = (element: HTMLElement | null) => {
    list.current = element
  }
  return ordered === true ? (
    <ol ref={take} className={className}>
      {children}
    </ol>
  ) : (
    <ul ref={take} className={className}>
      {children}
    </ul>
  )
}
