'use client'
import Link from 'next/link'
import { EmptyState, Head } from '@/app/_ui/paper.tsx'
import { projectPath } from '@/app/_ui/paths.ts'
import { RowList } from '@/app/_ui/row-list.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { filmPoints } from '@/lib/coating/film-map.ts'
import { stackOf } from '@/lib/coating/stack.ts'
import type { Assembly } from '@/lib/record/entities/things.ts'
import { all } from '@/lib/record/table.ts'
import { moment } from '@/lib/words/dates.ts'
import { counted } from '@/lib/words/money.ts'
import { ColourForm } from '../colours/[colour]/colour-form.tsx'
import { coatTitle } from './coat-words.ts'
import { FilmMap } from './film-map.tsx'

/** The coating record of a car: what lies on each assembly, the colours, and the film of the whole car. */
export function CoatingScreen() {
  const { record, standing } = useDesk()
  const coated = all(record.assemblies).filter(
    ({ id }) => stackOf(record, id).length > 0 || filmPoints(record, id).length > 0,
  )
  const bare = all(record.assemblies).filter((one) => !coated.includes(one))
  const colours = all(record.colours).filter(({ removedAt }) => removedAt === null)
  const keeps = all(record.parties).some(({ id, role }) => role === 'shop' && standing.actsFor(id))
  return (
    <div className="cols cols-main">
      <div className="stack">
        {coated.length === 0 ? (
          <EmptyState title="Nothing is coated yet">
            <p>What is laid on shell and panels stands here, from the metal outwards.</p>
          </EmptyState>
        ) : (
          <section className="sheet stack">
            <Head title="What lies on what" note={String(coated.length)} />
            <RowList className="ruled">
              {coated.map((assembly) => (
                <CoatedRow key={assembly.id} assembly={assembly} />
              ))}
            </RowList>
          </section>
        )}
        <FilmMap assemblies={coated} />
      </div>
      <div className="stack">
        <section className="sheet stack">
          <Head title="Colours" note={String(colours.length)} />
          {colours.length === 0 && <p>No colour is kept yet.</p>}
          <ul className="ruled">
            {colours.map((colour) => (
              <li key={colour.id}>
                <Link
                  className="row-link"
                  prefetch={false}
                  href={projectPath(record.id, `colours/${colour.id}`)}
                >
                  {colour.name}
                </Link>
                <p className="small">
                  {colour.cardAt === null
                    ? 'its card is not agreed yet'
                    : 'its sprayed-out card is agreed'}
                  {colour.batch !== null && ` · batch ${colour.batch}`}
                </p>
              </li>
            ))}
          </ul>
          {keeps && (
            <details>
              <summary>Keep a colour</summary>
              <ColourForm colour={null} />
            </details>
          )}
        </section>
        {bare.length > 0 && (
          <details className="sheet">
            <summary>Record the first coat of something else</summary>
            <ul className="ruled">
              {bare.map(({ id, name }) => (
                <li key={id}>
                  <Link
                    className="row-link"
                    prefetch={false}
                    href={projectPath(record.id, `coating/${id}`)}
                  >
                    {name}
                  </Link>
                </li>
              ))}
            </ul>
          </details>
        )}
      </div>
    </div>
  )
}

function CoatedRow({ assembly }: { readonly assembly: Assembly }) {
  const { record, reader } = useDesk()
  const stack = stackOf(record, assembly.id)
  const top = stack.at(-1)
  return (
    <li className="rowend">
      <div>
        <h3>
          <Link prefetch={false} href={projectPath(record.id, `coating/${assembly.id}`)}>
            {assembly.name}
          </Link>
        </h3>
        <p className="small">
          {top === undefined
            ? 'no coat recorded, film read'
            : `${coatTitle(top, record)} on top, ended ${moment(top.endedAt, reader)}`}
        </p>
      </div>
      <span className="small">{counted(stack.length, 'layer', 'layers', reader.locale)}</span>
    </li>
  )
}
