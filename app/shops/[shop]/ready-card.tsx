'use client'
import Link from 'next/link'
import { Card, Tag } from '@/app/_ui/paper.tsx'
import { projectPath } from '@/app/_ui/paths.ts'
import { CommandButton } from '@/app/_ui/press/command-button.tsx'
import { StateMark } from '@/app/_ui/state-mark.tsx'
import { useProject } from '@/lib/live/project-provider.tsx'
import { label, stageNumber } from '@/lib/words/labels.ts'
import { hours } from '@/lib/words/money.ts'
import { assemblyName } from '@/lib/words/names.ts'

/** A stage that can start, with the press that starts it. */
export function ReadyCard({ id }: { readonly id: string }) {
  const { record, reader } = useProject()
  const stage = record.stages.rows.get(id)
  if (stage === undefined) return null
  const path = projectPath(record.id, `stages/${stage.id}`)
  const number = stageNumber(stage.number)
  return (
    <Card
      number={stage.number}
      title={
        <Link className="plain" href={path}>
          {stage.name}
        </Link>
      }
    >
      <div className="stack tight">
        <div className="row spread">
          <p>
            <b>{record.projects.rows.get(record.id)?.name}</b>
          </p>
          <StateMark state={stage.state === 'reopened' ? 'reopened' : 'ready'} />
        </div>
        <div className="row">
          {stage.assemblies.map((assembly) => (
            <Tag key={assembly}>{assemblyName(assembly, record)}</Tag>
          ))}
        </div>
        {stage.hoursLikely !== null && (
          <p className="small">About {hours(stage.hoursLikely, reader.locale)} of work.</p>
        )}
        {stage.caution !== null && (
          <p className="small">
            <b>Caution.</b> {stage.caution}
          </p>
        )}
        <CommandButton
          name="stage.start"
          input={{ stage: stage.id }}
          stage={stage.id}
          wide
          done={{
            text: `${number} is in work.`,
            undo: {
              label: 'Take back',
              name: 'stage.takeBack',
              input: { stage: stage.id, reason: 'Pressed by mistake' },
            },
          }}
        >
          {label('stage.start', stage)}
        </CommandButton>
      </div>
    </Card>
  )
}
