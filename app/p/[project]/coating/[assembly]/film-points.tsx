import { Head } from '@/app/_ui/paper.tsx'
import { UnsentMark } from '@/app/_ui/unsent-mark.tsx'
import type { Desk } from '@/app/_ui/use-desk.ts'
import type { FilmPoint } from '@/lib/coating/film-map.ts'
import type { Assembly } from '@/lib/record/entities/things.ts'
import { moment } from '@/lib/words/dates.ts'
import { microns } from '../coat-words.ts'
import { FilmForm } from './film-form.tsx'

/** The film of an assembly, point by point, with what was read before; and the next readings. */
export function FilmPoints({
  assembly,
  points,
  desk: { reader, standing },
}: {
  readonly assembly: Assembly
  readonly points: readonly FilmPoint[]
  readonly desk: Desk
}) {
  return (
    <section className="sheet stack" id="film">
      <Head title="Film" note={String(points.length)} />
      {points.length === 0 ? (
        <p>Nobody has read it yet. Read before the lacquer and after it, at the same points.</p>
      ) : (
        <table className="table">
          <thead>
            <tr>
              <th scope="col">Point</th>
              <th scope="col" className="r">
                Film
              </th>
              <th scope="col" className="r">
                Of it lacquer
              </th>
            </tr>
          </thead>
          <tbody>
            {points.map((point) => (
              <tr key={point.last.id}>
                <th scope="row">
                  {point.panel}, {point.point}
                  <span className="small block">
                    {moment(point.last.at, reader)}
                    {!point.last.zeroed && ' · gauge not set to nought: proves nothing'}
                  </span>
                  {point.before.length > 0 && (
                    <span className="small block">
                      before: {point.before.map((film) => microns(film.microns, reader)).join(', ')}
                    </span>
                  )}
                  <UnsentMark entity={point.last.id} />
                </th>
                <td className="r">
                  <b>{microns(point.last.microns, reader)}</b>
                </td>
                <td className="r">
                  {point.lacquer === null ? 'not known' : microns(point.lacquer, reader)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {standing.actsFor(assembly.custodian) && (
        <details>
          <summary>Enter readings</summary>
          <FilmForm
            assembly={assembly}
            panels={[...new Set([...points.map(({ panel }) => panel), assembly.name])]}
          />
        </details>
      )}
    </section>
  )
}
