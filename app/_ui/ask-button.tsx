'use client'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { Condition } from '@/lib/record/condition.ts'
import type { StageId } from '@/lib/record/ids.ts'
import { moment } from '@/lib/words/dates.ts'
import { label } from '@/lib/words/labels.ts'
import { partyName } from '@/lib/words/names.ts'
import { CommandButton } from './command-button.tsx'

/** Puts a condition before the party that can clear it; once asked, says so instead. */
export function AskButton({
  condition,
  stage,
  to,
}: {
  readonly condition: Condition
  readonly stage: StageId
  readonly to: string
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
        <CommandButton name="ask.close" input={{ ask: asked.id }} line small>
          {label('ask.close')}
        </CommandButton>
      </>
    )
  }
  return (
    <CommandButton
      name="condition.ask"
      input={{ stage, rule: condition.rule, entity: condition.entity, to }}
      done={{ text: `${name} is asked.` }}
      line
    >
      {label('condition.ask', { name })}
    </CommandButton>
  )
}
