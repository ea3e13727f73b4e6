'use client'
import Link from 'next/link'
import { NotHere } from '@/app/_ui/not-here.tsx'
import { EmptyState, Head } from '@/app/_ui/paper.tsx'
import { projectPath } from '@/app/_ui/paths.ts'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { filmPoints } from '@/lib/coating/film-map.ts'
import { stackOf } from '@/lib/coating/stack.ts'
import { layersOf } from '@/lib/coating/thickness.ts'
import { all } from '@/lib/record/table.ts'
import { AgainstShell } from './against-shell.tsx'
import { CoatForm } from './coat-form.tsx'
import { FilmPoints } from './film-points.tsx'
import { LayerList } from './layer-list.tsx'
import { SandedForm } from './sanded-form.tsx'
import { StackDrawing } from './stack-drawing.tsx'

/** What lies on one assembly: the cut through it, each layer in words, its film, and what is recorded next. */
export function StackScreen({
  id,
  stage,
  product,
}: {
  readonly id: string
  /** Come from there to record its coat. */
  readonly stage: string | null
  readonly product: string | null
}) {
  const desk = useDesk()
  const { record, reader, standing } = desk
  const assembly = record.assemblies.rows.get(id)
  if (assembly === undefined)
    return <NotHere what="assembly" href={projectPath(record.id, 'coating')} />
  const layers = layersOf(record, assembly.id)
  const stack = layers.map(({ coat }) => coat)
  const stages = all(record.stages).filter(({ assemblies }) => assemblies.includes(assembly.id))
  const records =
    standing.actsFor(assembly.custodian) || stages.some(({ party }) => standing.actsFor(party))
  const others = all(record.assemblies)
    .filter((one) => one.id !== assembly.id && stackOf(record, one.id).length > 0)
    .toSorted((a, b) => Number(b.id === assembly.host) - Number(a.id === assembly.host))
  return (
    <div className="stack">
      <p className="way">
        <Link prefetch={false} href={projectPath(record.id, 'coating')}>
          Coating record
        </Link>
      </p>
      <div className="cols cols-main">
        <div className="stack">
          {layers.length === 0 ? (
            <EmptyState title={`Nothing is recorded on ${assembly.name}`}>
              <p>Record what is laid, from the metal outwards: the gate reads it.</p>
            </EmptyState>
          ) : (
            <section className="sheet stack">
              <Head title={assembly.name} note={`${layers.length} on it`} />
              <StackDrawing layers={layers} name={assembly.name} record={record} reader={reader} />
              <LayerList layers={layers} desk={desk} />
              {records && <SandedForm assembly={assembly} stack={stack} />}
            </section>
          )}
        </div>
        <div className="stack">
          {records && (
            <section className="sheet stack" id="record">
              <Head title="Record a coat" />
              <details open={stage !== null || product !== null || layers.length === 0}>
                <summary>What was laid, and when its last coat ended</summary>
                <CoatForm assembly={assembly} desk={desk} stage={stage} product={product} />
              </details>
            </section>
          )}
          {layers.length > 0 && others.length > 0 && (
            <AgainstShell assembly={assembly} others={others} desk={desk} />
          )}
          <FilmPoints assembly={assembly} points={filmPoints(record, assembly.id)} desk={desk} />
        </div>
      </div>
    </div>
  )
}
