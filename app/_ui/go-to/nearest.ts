/** Somewhere one can go: what it is called, what it is, and where it stands. */
export interface PlaceToGo {
  readonly path: string
  readonly name: string
  /** What it is and of which car: `stage of the Averley Three-Litre`. */
  readonly under: string
}

/** So many are shown at once: who types another letter sees the rest. */
const MOST = 40

/** The fewer, the nearer: its own number or name, a word of it that begins so, anywhere in it, in what it is. Null: not at all. */
function distance({ name, under }: PlaceToGo, wanted: string): number | null {
  const text = name.toLowerCase()
  const number = /^\d+/.exec(text)?.[0]
  if (text === wanted || number === wanted) return 0
  if (text.startsWith(wanted)) return 1
  if (text.split(/[\s·,/-]+/).some((word) => word.startsWith(wanted))) return 2
  if (text.includes(wanted)) return 3
  const words = wanted.split(/\s+/)
  const whole = `${text} ${under.toLowerCase()}`
  return words.every((word) => whole.includes(word)) ? 4 : null
}

/** What fits what was typed, the nearest first; of what is equally near, what stood first stays first. */
export function nearest(places: readonly PlaceToGo[], typed: string): readonly PlaceToGo[] {
  const wanted = typed.trim().toLowerCase()
  if (wanted === '') return places.slice(0, MOST)
  return places
    .flatMap((place) => {
      const far = distance(place, wanted)
      return far === null ? [] : [{ place, far }]
    })
    .toSorted((a, b) => a.far - b.far)
    .slice(0, MOST)
    .map(({ place }) => place)
}

/** Those that were visited lately come first, the latest before the others; no address comes twice under one name. */
export function recentFirst(
  places: readonly PlaceToGo[],
  recent: readonly string[],
): readonly PlaceToGo[] {
  const rank = new Map(recent.map((path, n) => [path, n]))
  const once = new Map(places.map((place) => [`${place.path} ${place.name}`, place]))
  return [...once.values()].toSorted(
    (a, b) => (rank.get(a.path) ?? recent.length) - (rank.get(b.path) ?? recent.length),
  )
}
