/** A token of the look that paints words or lines, one that lies under it, and the least contrast between them. */
export interface Pair {
  readonly ink: string
  readonly on: string
  readonly least: number
}

/** Body text (WCAG 2.2, 1.4.6), other text (1.4.3), and lines that carry a meaning (1.4.11). */
const BODY = 7
const TEXT = 4.5
const LINE = 3

const on = (ink: string, least: number, ...materials: readonly string[]): readonly Pair[] =>
  materials.map((material) => ({ ink, on: material, least }))

/** Paper, tin, tape and floor: all that words lie on, but slate. */
const MATERIALS = ['floor', 'card', 'tag', 'sheet', 'copy', 'tin', 'tape'] as const

/** Every ink on everything that it is laid on, somewhere in the stylesheets. */
export const pairs: readonly Pair[] = [
  ...on('ink', BODY, ...MATERIALS),
  ...on('ink-soft', BODY, ...MATERIALS),
  ...on('carbon', BODY, 'floor', 'card', 'sheet', 'copy', 'tin'),
  ...on('carbon', TEXT, 'tag', 'tape'),
  ...on('stamp', BODY, 'card', 'sheet', 'copy', 'tin'),
  ...on('stamp', TEXT, 'floor', 'tag', 'tape'),
  ...on('oxide', BODY, 'card', 'sheet', 'copy', 'tin'),
  // Bold, or 20 px and up: never a sentence in body weight.
  ...on('oxide', TEXT, 'floor', 'tag', 'tape'),
  ...on('on-ink', BODY, 'ink'),
  ...on('on-carbon', BODY, 'carbon'),
  ...on('on-oxide', BODY, 'oxide'),
  ...on('on-ink', BODY, 'stamp'),
  ...on('chalk', BODY, 'slate'),
  ...on('slate', BODY, 'chalk'),
  ...on('on-slot', BODY, 'slot'),
  ...on('on-label', BODY, 'label'),
  // Where the floor ends, and a card that lies on it.
  ...on('slot', LINE, 'slate'),
]
