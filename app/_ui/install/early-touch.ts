/** What a thumb did before the page's code was here: the last press, and what was written or chosen in which field. */
interface Early {
  press: HTMLElement | null
  readonly fields: Map<Field, string>
}
type Field = HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement

const isField = (target: EventTarget | null): target is Field =>
  target instanceof HTMLInputElement ||
  target instanceof HTMLTextAreaElement ||
  target instanceof HTMLSelectElement

const isTick = (field: Field): field is HTMLInputElement =>
  field instanceof HTMLInputElement && (field.type === 'checkbox' || field.type === 'radio')

const early: Early = { press: null, fields: new Map() }

function pressed({ target }: Event): void {
  if (target instanceof Element) early.press = target.closest('button') ?? early.press
}
function written({ target }: Event): void {
  if (isField(target)) early.fields.set(target, isTick(target) ? '' : target.value)
}

const heard: readonly [string, (event: Event) => void][] = [
  ['click', pressed],
  ['input', written],
  ['change', written],
]

/** A form that nobody listens to yet would be sent by the browser itself, and the page with it. */
const stay = (event: Event): void => event.preventDefault()

/**
 * What React would answer by taking over the whole page at once, with the thumb still down: kept from it, it takes over in slices between
 * frames. What the browser does by itself (a link, a letter, a fold) is done meanwhile.
 */
const HASTENING = [
  ...['pointerdown', 'pointerup', 'mousedown', 'mouseup', 'touchstart', 'touchend', 'click'],
  ...['keydown', 'keyup', 'input', 'change', 'focusin', 'focusout'],
]
const keepBack = (event: Event): void => event.stopPropagation()

let listening: readonly (readonly [string, (event: Event) => void])[] = []

/** Begins to hear what is done before the page's code is here. `served`: what is asked for late stands on this page already. */
export function hearEarlyTouch(served: boolean): void {
  listening = [
    ...heard,
    ['submit', stay],
    ...(served ? HASTENING.map((name) => [name, keepBack] as const) : []),
  ]
  for (const [name, hear] of listening) addEventListener(name, hear, { capture: true })
}

/**
 * Does again what was done before the page's code was here, now that it listens: nothing written is lost, and a press counts once.
 * Links needed nobody. Only the first call does anything.
 */
export function replayEarlyTouch(): void {
  for (const [name, hear] of listening) removeEventListener(name, hear, { capture: true })
  for (const [field, value] of early.fields) if (field.isConnected) write(field, value)
  early.fields.clear()
  const { press } = early
  early.press = null
  // A moment later: by then the screen knows what was written.
  if (press !== null) setTimeout(() => press.isConnected && press.click())
}

/** React passes over an input whose value it has seen already: so it sees the field empty first. */
function write(field: Field, value: string): void {
  if (isTick(field)) {
    // One of several that another took the place of is no longer what was chosen.
    if (field.type === 'radio' && !field.checked) return
    field.checked = !field.checked
    field.click()
    return
  }
  // What was chosen is in there still, and may not be written by a program.
  if (field.type !== 'file') {
    setPastReact(field, '')
    field.dispatchEvent(new Event('input', { bubbles: true }))
    setPastReact(field, value)
  }
  field.dispatchEvent(new Event('input', { bubbles: true }))
  field.dispatchEvent(new Event('change', { bubbles: true }))
}

/** React hears what is set on the element itself, and would take it for its own doing. */
function setPastReact(field: Field, value: string): void {
  Object.getOwnPropertyDescriptor(Object.getPrototypeOf(field), 'value')?.set?.call(field, value)
}
