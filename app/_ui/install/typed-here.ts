import * as z from 'zod/mini'

/** What stood in a field when the page was loaded anew: the field by its words, and which of its like it was. */
const Typed = z.object({
  path: z.string(),
  fields: z.array(z.object({ name: z.string(), nth: z.int(), value: z.string() })),
})
type Typed = z.infer<typeof Typed>

type Field = HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement

const KEY = 'fettleyard typed here'
/** Of these the browser lets nobody put a value back, or it must not lie anywhere, or it is no text. */
const NOT_KEPT: readonly string[] = ['file', 'password', 'checkbox', 'radio', 'hidden', 'submit']

const isField = (node: unknown): node is Field =>
  (node instanceof HTMLInputElement && !NOT_KEPT.includes(node.type)) ||
  node instanceof HTMLTextAreaElement ||
  node instanceof HTMLSelectElement

const nameOf = (field: Field): string =>
  field.labels?.[0]?.textContent || field.getAttribute('aria-label') || field.name || field.id

const likes = (name: string): readonly Field[] =>
  [...document.querySelectorAll('input, textarea, select')]
    .filter(isField)
    .filter((field) => nameOf(field) === name)

/** Notes what is typed from now on, so that it goes along when this page is loaded anew. */
export interface TypedHere {
  /** Lays it down for the next page at this address. */
  readonly keep: () => void
  readonly end: () => void
}

/** Begins to note, and puts back what was laid down, as soon as its fields stand there. */
export function noteTyped(): TypedHere {
  const touched = new Set<Field>()
  const note = ({ target }: Event) => isField(target) && touched.add(target)
  document.addEventListener('input', note)
  const stop = putBack(touched)
  return {
    keep() {
      const fields = [...touched]
        .filter((field) => field.isConnected && field.value !== '')
        .map((field) => {
          const name = nameOf(field)
          return { name, nth: likes(name).indexOf(field), value: field.value }
        })
      if (fields.length === 0) return
      const typed: Typed = { path: window.location.pathname, fields }
      sessionStorage.setItem(KEY, JSON.stringify(typed))
    },
    end() {
      document.removeEventListener('input', note)
      stop()
    },
  }
}

function putBack(touched: Set<Field>): () => void {
  const typed = laidDown()
  sessionStorage.removeItem(KEY)
  if (typed === null) return () => undefined
  let left = typed.fields
  const look = () => {
    if (window.location.pathname !== typed.path) left = []
    left = left.filter(({ name, nth, value }) => {
      const field = likes(name)[nth]
      if (field === undefined) return true
      // What a hand has written there meanwhile is newer.
      if (!touched.has(field)) write(field, value)
      touched.add(field)
      return false
    })
    if (left.length === 0) seen.disconnect()
  }
  const seen = new MutationObserver(look)
  seen.observe(document.body, { childList: true, subtree: true })
  look()
  return () => seen.disconnect()
}

function laidDown(): Typed | null {
  try {
    const read = Typed.safeParse(JSON.parse(sessionStorage.getItem(KEY) ?? 'null'))
    return read.success && read.data.path === window.location.pathname ? read.data : null
  } catch {
    return null
  }
}

/** As a hand would: React hears of it only when the element's own setter wrote it. */
function write(field: Field, value: string): void {
  const own = Object.getOwnPropertyDescriptor(Object.getPrototypeOf(field), 'value')
  own?.set?.call(field, value)
  field.dispatchEvent(new Event('input', { bubbles: true }))
  field.dispatchEvent(new Event('change', { bubbles: true }))
}
