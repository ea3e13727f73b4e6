import type { Layer } from '@/lib/coating/thickness.ts'
import type { ProjectRecord } from '@/lib/record/project-record.ts'
import { moment } from '@/lib/words/dates.ts'
import type { Reader } from '@/lib/words/reader.ts'
import { coatTitle, microns } from '../coat-words.ts'

/** Heights in units of the drawing: a row of words, the metal, a layer of which the thickness isn't known, the thinnest that is drawn. */
const ROW = 46
const METAL = 30
const UNKNOWN = 14
const THINNEST = 6

/** The cut through what lies on an assembly: metal at the foot, each layer over it as thick as it was read, hatched where nobody read it. */
export function StackDrawing({
  layers,
  name,
  record,
  reader,
}: {
  readonly layers: readonly Layer[]
  readonly name: string
  readonly record: ProjectRecord
  readonly reader: Reader
}) {
  const height = (layers.length + 1) * ROW
  const known = layers.reduce((sum, layer) => sum + (layer.microns ?? 0), 0)
  const unknown = layers.filter((layer) => layer.microns === null).length
  const scale = known === 0 ? 0 : Math.min(1.4, (height - METAL - unknown * UNKNOWN) / known)
  const tall = layers.map((layer) =>
    layer.microns === null ? UNKNOWN : Math.max(THINNEST, layer.microns * scale),
  )
  const bands = layers.map((layer, i) => {
    const below = tall.slice(0, i).reduce((sum, one) => sum + one, METAL)
    const own = tall[i] ?? 0
    return { layer, y: height - below - own, own, row: height - (i + 1.5) * ROW }
  })
  const sentence = `A cut through ${name}, from the metal outwards: ${layers
    .map(
      (layer) =>
        `${coatTitle(layer.coat, record)}${layer.microns === null ? ', thickness not read' : `, ${microns(layer.microns, reader)}`}`,
    )
    .join('; ')}.`
  return (
    <figure className="cut">
      <svg viewBox={`0 0 358 ${height}`} role="img" aria-label={sentence}>
        <defs>
          <pattern id="unread" width="8" height="8" patternUnits="userSpaceOnUse">
            <path d="M0 8 8 0" className="cut-hatch" />
          </pattern>
        </defs>
        {bands.map(({ layer, y, own, row }) => (
          <g key={layer.coat.id}>
            <rect
              x="2"
              y={y}
              width="96"
              height={own}
              className={`cut-band cut-${layer.coat.product.replaceAll(' ', '-')}`}
            />
            {layer.microns === null && (
              <rect x="2" y={y} width="96" height={own} fill="url(#unread)" />
            )}
            <path className="cut-string" d={`M98 ${y + own / 2}L128 ${row}h8`} />
            <text x="142" y={row - 3} className="cut-name">
              {coatTitle(layer.coat, record).slice(0, 26)}
            </text>
            <text x="142" y={row + 15} className="cut-small">
              {layer.microns === null ? 'not read' : microns(layer.microns, reader)}
              {` · ${moment(layer.coat.endedAt, reader)}`}
            </text>
          </g>
        ))}
        <rect
          x="2"
          y={height - METAL}
          width="96"
          height={METAL - 2}
          className="cut-band cut-metal"
        />
        <text x="142" y={height - METAL / 2 + 5} className="cut-name">
          Metal
        </text>
      </svg>
      <figcaption className="small soft">
        As thick as it was read; hatched where nobody read the film before and after it.
      </figcaption>
    </figure>
  )
}
