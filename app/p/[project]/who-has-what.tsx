'use client'
import Link from 'next/link'
import { Sheet } from '@/app/_ui/paper.tsx'
import { projectPath } from '@/app/_ui/paths.ts'
import { RowList } from '@/app/_ui/row-list.tsx'
import { StateMark } from '@/app/_ui/state-mark.tsx'
import { openHandoversOf, stagesOn } from '@/lib/gate/indexes.ts'
import { stageStatus } from '@/lib/gate/status.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { Assembly } from '@/lib/record/entities/things.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import type { ProjectRecord } from '@/lib/record/project-record.ts'
import { since } from '@/lib/words/dates.ts'
import { counted } from '@/lib/words/money.ts'
import { assemblyName, listed, partyName } from '@/lib/words/names.ts'

/** What stands on an assembly just now: what is in work on it, else the next stage to come, else the last one done. */
export function stageNow(record: ProjectRecord, assembly: string): Stage | undefined {
  const stages = stagesOn(record.stages, assembly).toSorted((a, b) => a.number - b.number)
  return (
    stages.find(({ state }) => state === 'in work' || state === 'paused' || state === 'ended') ??
    stages.find(({ state }) => state !== 'signed off') ??
    stages.at(-1)
  )
}

/** Every assembly that stands by itself: with whom it is, since when, what is on it, and how its work stands. */
export function WhoHasWhat() {
  const { record, reader } = useProject()
  const alone = [...record.assemblies.rows.values()].filter(({ host }) => host === null)
  if (alone.length === 0) return null
  const rests = ({ id }: Assembly): boolean => {
    const stage = stageNow(record, id)
    const status = stage === undefined ? 'signed off' : stageStatus(record, stage, reader.now)
    return status === 'waiting' || status === 'signed off'
  }
  const onIt = new Set([...record.assemblies.rows.values()].map(({ host }) => host))
  const shown = (assembly: Assembly): boolean =>
    !rests(assembly) ||
    onIt.has(assembly.id) ||
    openHandoversOf(record.handovers, assembly.id).length > 0
  const moving = alone.filter(shown)
  const resting = Map.groupBy(
    alone.filter((assembly) => !shown(assembly)),
    (assembly) => {
      const stage = stageNow(record, assembly.id)
      return `${assembly.custodian} ${stage === undefined ? '' : stageStatus(record, stage, reader.now)}`
    },
  )
  return (
    <Sheet title="Who has what" note={counted(alone.length, 'assembly', 'assemblies', 'en')}>
      <RowList className="ruled">
        {moving.map((assembly) => (
          <Row key={assembly.id} assembly={assembly} />
        ))}
        {[...resting].map(([key, assemblies]) => (
          <Together key={key} assemblies={assemblies} />
        ))}
      </RowList>
    </Sheet>
  )
}

function Row({ assembly }: { readonly assembly: Assembly }) {
  const { record, reader } = useProject()
  const fitted = [...record.assemblies.rows.values()].filter(({ host }) => host === assembly.id)
  const stage = stageNow(record, assembly.id)
  const handover = openHandoversOf(record.handovers, assembly.id)[0]
  const pieces =
    assembly.pieces > 1 ? ` · ${counted(assembly.pieces, 'piece', 'pieces', reader.locale)}` : ''
  return (
    <li className="where">
      <div>
        <h3>
          <Link
            className="plain"
            prefetch={false}
            href={projectPath(record.id, `assemblies/${assembly.id}`)}
          >
            {assembly.name}
          </Link>
        </h3>
        <p className="small">
          {partyName(assembly.custodian, record)}
          {pieces}, {since(assembly.since, reader)}
        </p>
        {fitted.length > 0 && (
          <p className="small">
            On it:{' '}
            {listed(
              fitted.map(({ id }) => assemblyName(id, record)),
              reader.locale,
            )}
          </p>
        )}
        {handover !== undefined && (
          <p className="small">
            <Link href={projectPath(record.id, `handovers/${handover.id}`)}>
              {handover.state === 'released' ? 'Released' : 'To be released'} to{' '}
              {partyName(handover.to, record, reader)}
            </Link>
          </p>
        )}
      </div>
      {stage !== undefined && <StateMark state={stageStatus(record, stage, reader.now)} />}
    </li>
  )
}

/** Assemblies on which nothing is done just now, those with one party together. */
function Together({ assemblies }: { readonly assemblies: readonly Assembly[] }) {
  const { record, reader } = useProject()
  const [first] = assemblies
  if (first === undefined) return null
  if (assemblies.length === 1) return <Row assembly={first} />
  const stage = stageNow(record, first.id)
  return (
    <li className="where">
      <div>
        <h3>{partyName(first.custodian, record)}</h3>
        <p>
          {assemblies.map((assembly, n) => (
            <span key={assembly.id}>
              {n === 0 ? '' : ' · '}
              <Link
                className="plain"
                prefetch={false}
                href={projectPath(record.id, `assemblies/${assembly.id}`)}
              >
                {assembly.name}
                {assembly.pieces > 1
                  ? `, ${counted(assembly.pieces, 'piece', 'pieces', reader.locale)}`
                  : ''}
              </Link>
            </span>
          ))}
        </p>
      </div>
      {stage !== undefined && <StateMark state={stageStatus(record, stage, reader.now)} />}
    </li>
  )
}
