/** At which version of its record each entity last changed. */
export type Versions = ReadonlyMap<string, number> | Layered

/** What the last steps changed, over all that was there before: a step costs by its own size, not by the record's. */
interface Layered {
  readonly under: ReadonlyMap<string, number>
  readonly over: ReadonlyMap<string, number>
  readonly size: number
  readonly get: (id: string) => number | undefined
  readonly has: (id: string) => boolean
  readonly keys: () => MapIterator<string>
  readonly [Symbol.iterator]: () => MapIterator<[string, number]>
}

/** Entities in the upper layer before both become one again: then each step copies few, and the whole only now and then. */
const OVER_MOST = 32

/** The versions after a step that changed those entities. */
export function versionsAfter(
  before: Versions,
  { version, entities }: { readonly version: number; readonly entities: readonly { id: string }[] },
): Versions {
  const [under, last] = 'over' in before ? [before.under, before.over] : [before, none]
  const over = new Map(last)
  for (const { id } of entities) over.set(id, version)
  return over.size > OVER_MOST ? new Map([...under, ...over]) : layered(under, over)
}

const none: ReadonlyMap<string, number> = new Map()

function layered(under: ReadonlyMap<string, number>, over: ReadonlyMap<string, number>): Layered {
  const whole = () => new Map([...under, ...over])
  let size = under.size
  for (const id of over.keys()) if (!under.has(id)) size++
  return {
    under,
    over,
    size,
    get: (id) => over.get(id) ?? under.get(id),
    has: (id) => over.has(id) || under.has(id),
    keys: () => whole().keys(),
    [Symbol.iterator]: () => whole()[Symbol.iterator](),
  }
}
