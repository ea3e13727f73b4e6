'use client'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { Condition } from '@/lib/record/condition.ts'
import type { StageId } from '@/lib/record/ids.ts'
import { moment } from '@/lib/words/dates.ts'
import { label } from '@/lib/words/labels.ts'
import { partyName } from '@/lib/words/names.ts'
import { undoMade } from './done-toast.ts'
import { PressButton, type ShowsOutcome } from './press-button.tsx'

/** Puts a condition before the party that can clear it; once asked, says so instead. */
export function AskButton({
  condition,
  stage,
  to,
  outcome,
}: {
  readonly condition: Condition
  readonly stage: StageId
  readonly to: string
  readonly outcome: ShowsOutcome
}) {
  const { record, reader } = useProject()
  const asked = [...record.asks.rows.values()].find(
    (ask) =>
      ask.closedAt === null &&
      ask.stage === stage &&
      ask.rule === condition.rule &&
      ask.entity === condition.entity &&
      ask.from === reader.view.party,
  )
  const name = partyName(to, record)
  if (asked !== undefined) {
    return (
      <>
        <p className="small">
          {name} was asked: {moment(asked.at, reader)}.
        </p>
        <PressButton name="ask.close" input={{ ask: asked.id }} line small outcome={outcome}>
          {label('ask.close')}
        </PressButton>
      </>
    )
  }
  return (
    <PressButton
      name="condition.ask"
      input={{ stage, rule: condition.rule, entity: condition.entity, to }}
      done={{
        text: `${name} is asked.`,
        undo: undoMade('ask', 'ask', { name: 'ask.close', label: label('ask.close') }),
      }}
      line
      outcome={outcome}
    >
      {label('condition.ask', { name })}
    </PressButton>
  )
}
