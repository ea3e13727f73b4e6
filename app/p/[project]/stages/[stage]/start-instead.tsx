'use client'
import Link from 'next/link'
import { Sheet } from '@/app/_ui/paper.tsx'
import { projectPath } from '@/app/_ui/paths.ts'
import { gateOf } from '@/lib/gate/gate.ts'
import { stagesOfParty } from '@/lib/gate/indexes.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { Stage } from '@/lib/record/entities/work.ts'
import { hours } from '@/lib/words/money.ts'
import { assemblyName, listed, stageName } from '@/lib/words/names.ts'

/** How many a person can choose from at a glance. */
const SHOWN = 4

/** What the same party can start now. */
export function StartInstead({ stage }: { readonly stage: Stage }) {
  const { record, reader } = useProject()
  const gate = gateOf(record, reader.now)
  const ready = stagesOfParty(record.stages, stage.party).filter(
    (other) =>
      other.id !== stage.id && other.state === 'planned' && gate.conditions(other).length === 0,
  )
  if (ready.length === 0 || stage.party !== reader.view.party) return null
  return (
    <Sheet title="Start instead" note={ready.length}>
      <ul className="ruled">
        {ready.slice(0, SHOWN).map((other) => (
          <li key={other.id} className="rowend">
            <div>
              <h3>{stageName(other.id, record)}</h3>
              <p className="small">
                {listed(
                  other.assemblies.map((id) => assemblyName(id, record)),
                  reader.locale,
                )}
                {other.hoursLikely === null
                  ? ''
                  : ` · about ${hours(other.hoursLikely, reader.locale)}`}
              </p>
            </div>
            <Link
              className="btn btn-line"
              href={projectPath(record.id, `stages/${other.id}`)}
              aria-label={`Look at ${stageName(other.id, record)}`}
            >
              Look
            </Link>
          </li>
        ))}
      </ul>
    </Sheet>
  )
}
