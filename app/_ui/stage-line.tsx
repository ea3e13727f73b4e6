'use client'
import Link from 'next/link'
import { stageStatus } from '@/lib/gate/status.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { Stage } from '@/lib/record/entities/work.ts'
import { stageNumber } from '@/lib/words/labels.ts'
import { partyName } from '@/lib/words/names.ts'
import { projectPath } from './paths.ts'
import { StateMark } from './state-mark.tsx'

/** A stage in a list: number, name, whose it is, state; the whole line leads to it. */
export function StageLine({ stage, note }: { readonly stage: Stage; readonly note?: string }) {
  const { record, reader } = useProject()
  const said = note === undefined || note === '' ? '' : ` · ${note}`
  return (
    <Link prefetch={false} className="line" href={projectPath(record.id, `stages/${stage.id}`)}>
      <b className="num">{stageNumber(stage.number)}</b>
      <span>
        <b>{stage.name}</b>
        <br />
        <span className="small">
          {partyName(stage.party, record)}
          {said}
        </span>
      </span>
      <StateMark state={stageStatus(record, stage, reader.now)} />
    </Link>
  )
}
