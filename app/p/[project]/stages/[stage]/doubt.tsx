'use client'
import { HeldPress } from '@/app/_ui/form/held-press.tsx'
import { Notice } from '@/app/_ui/paper.tsx'
import { Outcome } from '@/app/_ui/press/outcome.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { useCommand } from '@/lib/live/use-command.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import { label, stageNumber } from '@/lib/words/labels.ts'
import { partyName, personName } from '@/lib/words/names.ts'

/** Why a stage stands in doubt, and the press of those entitled to confirm it. */
export function Doubt({ stage }: { readonly stage: Stage }) {
  const { record, reader, standing } = useDesk()
  const press = useCommand('stage.confirm', undefined, { stage: stage.id })
  if (stage.state !== 'in doubt') return null
  const may = standing.managesFor(stage.party) || standing.managesLead
  return (
    <div className="stack tight">
      <Notice mark="doubt">
        <p>
          <b>{stageNumber(stage.number)} is in doubt.</b>
          {stage.doubt === null ? '' : ` ${stage.doubt}`}
        </p>
        {!may && <p>{partyName(stage.party, record)} or the lead confirms it, or reopens it.</p>}
      </Notice>
      {may && (
        <HeldPress
          label={label('stage.confirm', stage)}
          hint={`It still stands: as ${personName(reader.person, reader.people)}, after looking at it.`}
          waiting={press.waiting}
          onPressed={() => void press.send({ stage: stage.id })}
        />
      )}
      <Outcome press={press} stage={stage.id} />
    </div>
  )
}
