import type { Film } from '../record/entities/coating.ts'
import type { AssemblyId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import type { Instant } from '../record/scalars.ts'
import { indexBy } from '../record/table.ts'
import { stackOf } from './stack.ts'

const filmsOn = indexBy<Film>((film) => [film.assembly])

/** One point of a panel: its last reading, all before it, and how much of the film is lacquer where that is known. */
export interface FilmPoint {
  readonly panel: string
  readonly point: string
  readonly last: Film
  readonly before: readonly Film[]
  /** µm by which the film grew over the lacquer; null where it wasn't read both before and after. */
  readonly lacquer: number | null
}

/** Readings of an assembly, the latest of each point with those before it, in the order of the panels' first reading. */
export function filmPoints(record: ProjectRecord, assembly: AssemblyId): FilmPoint[] {
  const places = new Map<string, Film[]>()
  for (const film of filmsOn(record.films, assembly)) {
    const key = JSON.stringify([film.panel, film.point])
    places.set(key, [...(places.get(key) ?? []), film])
  }
  const ended = firstLacquer(record, assembly)
  return [...places.values()].flatMap((read) => {
    const inTime = [...read].sort((a, b) => Date.parse(a.at) - Date.parse(b.at))
    const last = inTime.at(-1)
    if (last === undefined) return []
    const { panel, point } = last
    return [{ panel, point, last, before: inTime.slice(0, -1), lacquer: lacquerAt(inTime, ended) }]
  })
}

/** When the last coat under the lacquer ended, and the lacquer itself. */
interface LacquerEnds {
  readonly under: Instant | null
  readonly over: Instant
}

function firstLacquer(record: ProjectRecord, assembly: AssemblyId): LacquerEnds | null {
  const stack = stackOf(record, assembly)
  const from = stack.findIndex(({ product }) => product === 'lacquer')
  const lacquer = stack.filter(({ product }) => product === 'lacquer')
  const over = lacquer.at(-1)?.endedAt
  return over === undefined ? null : { under: stack[from - 1]?.endedAt ?? null, over }
}

function lacquerAt(inTime: readonly Film[], ends: LacquerEnds | null): number | null {
  if (ends === null) return null
  const proved = inTime.filter(({ zeroed }) => zeroed)
  const after = proved.findLast(({ at }) => at >= ends.over)
  const before = proved.findLast(
    ({ at }) => at < ends.over && (ends.under === null || at >= ends.under),
  )
  return after === undefined || before === undefined ? null : after.microns - before.microns
}
