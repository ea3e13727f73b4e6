import { Head } from '@/app/_ui/paper.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { type FilmPoint, filmPoints } from '@/lib/coating/film-map.ts'
import type { Assembly } from '@/lib/record/entities/things.ts'
import { microns } from './coat-words.ts'

/** A panel of the plan, and the words by which a reading's panel is known to be it. Our own outline of a saloon laid open: roof in the middle, sides folded out. */
interface Panel {
  readonly name: string
  readonly words: readonly string[]
  readonly path: string
  readonly at: readonly [number, number]
}

const panels: readonly Panel[] = [
  { name: 'Bonnet', words: ['bonnet'], path: 'M24 96h96v88H24q-14-44 0-88z', at: [68, 144] },
  { name: 'Roof', words: ['roof'], path: 'M146 100h104v80H146z', at: [198, 144] },
  { name: 'Boot lid', words: ['boot'], path: 'M276 96h66q14 44 0 88h-66z', at: [308, 144] },
  {
    name: 'Left front wing',
    words: ['left front wing', 'front wing, left'],
    path: 'M24 188h94v56H88a22 22 0 0 0-44 0H18q-4-30 6-56z',
    at: [82, 214],
  },
  {
    name: 'Right front wing',
    words: ['right front wing', 'front wing, right'],
    path: 'M24 92h94V36H88a22 22 0 0 1-44 0H18q-4 30 6 56z',
    at: [82, 72],
  },
  {
    name: 'Left front door',
    words: ['left front door', 'left door', 'front door, left'],
    path: 'M122 188h62v56h-62z',
    at: [153, 220],
  },
  {
    name: 'Right front door',
    words: ['right front door', 'right door', 'front door, right'],
    path: 'M122 36h62v56h-62z',
    at: [153, 68],
  },
  {
    name: 'Left rear door',
    words: ['left rear door', 'rear door, left'],
    path: 'M188 188h62v56h-62z',
    at: [219, 220],
  },
  {
    name: 'Right rear door',
    words: ['right rear door', 'rear door, right'],
    path: 'M188 36h62v56h-62z',
    at: [219, 68],
  },
  {
    name: 'Left rear wing',
    words: ['left rear wing', 'left quarter', 'rear wing, left'],
    path: 'M254 188h86q12 28 8 56h-18a22 22 0 0 0-44 0h-32z',
    at: [292, 212],
  },
  {
    name: 'Right rear wing',
    words: ['right rear wing', 'right quarter', 'rear wing, right'],
    path: 'M254 92h86q12-28 8-56h-18a22 22 0 0 1-44 0h-32z',
    at: [292, 76],
  },
]

/** Bands of the whole film, in µm: below the first is thin, above the last thick. Typical for a repainted car; the figure stands beside each. */
const THIN = 90
const THICK = 220

interface Read {
  readonly panel: Panel
  readonly points: readonly FilmPoint[]
  readonly mean: number | null
}

/** The film of the whole car, panel by panel: tone and figure; all of it in words below. */
export function FilmMap({ assemblies }: { readonly assemblies: readonly Assembly[] }) {
  const { record, reader } = useDesk()
  const points = assemblies.flatMap(({ id }) => filmPoints(record, id))
  if (points.length === 0) return null
  const read = panels.map((panel): Read => {
    const own = points.filter((point) => isPanel(point, panel))
    const proved = own.filter(({ last }) => last.zeroed).map(({ last }) => last.microns)
    const sum = proved.reduce((total, one) => total + one, 0)
    return { panel, points: own, mean: proved.length === 0 ? null : sum / proved.length }
  })
  const elsewhere = points.filter((point) => !panels.some((panel) => isPanel(point, panel)))
  const said = read.flatMap(({ panel, mean }) =>
    mean === null ? [] : [`${panel.name} ${microns(mean, reader)}, ${tone(mean)}`],
  )
  const unread = read.filter(({ mean }) => mean === null).map(({ panel }) => panel.name)
  return (
    <section className="sheet stack">
      <Head title="Film of the car" note={`${points.length} points`} />
      <figure className="film-map">
        <svg
          viewBox="0 0 366 280"
          role="img"
          aria-label={`The car laid open, nose to the left, with the mean film of each panel. ${said.join('; ')}.`}
        >
          {read.map(({ panel, mean }) => (
            <g key={panel.name}>
              <path
                d={panel.path}
                className={
                  mean === null ? 'film-panel film-unread' : `film-panel film-${tone(mean)}`
                }
              />
              <text x={panel.at[0]} y={panel.at[1]} className="film-figure">
                {mean === null ? '–' : Math.round(mean)}
              </text>
            </g>
          ))}
        </svg>
        <figcaption className="small">
          Mean of each panel in µm. Heavy line: thin, below {THIN}; manila: between; dark: thick,
          above {THICK}. A dash: not read, or with a gauge that wasn’t set to nought.
        </figcaption>
      </figure>
      <ul className="ruled">
        {[
          ...said,
          ...elsewhere.map(
            ({ panel, point, last }) => `${panel}, ${point}: ${microns(last.microns, reader)}`,
          ),
        ].map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {unread.length > 0 && <p className="small soft">Not read: {unread.join(', ')}.</p>}
    </section>
  )
}

const tone = (mean: number): 'thin' | 'usual' | 'thick' =>
  mean < THIN ? 'thin' : mean > THICK ? 'thick' : 'usual'

const isPanel = (point: FilmPoint, panel: Panel): boolean => {
  const name = point.panel.toLowerCase()
  return panel.words.some((word) => name.includes(word))
}
