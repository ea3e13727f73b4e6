'use client'
import Link from 'next/link'
import { Mark, type MarkName } from '@/app/_ui/mark.tsx'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { Condition } from '@/lib/record/condition.ts'
import type { StageId } from '@/lib/record/ids.ts'
import { partyName } from '@/lib/words/names.ts'
import { isGateRule, sentence } from '@/lib/words/sentence.ts'
import { AskButton } from './ask-button.tsx'
import { isForManagers, waysTo } from './clearing.ts'
import { ConcedeForm, mayConcede } from './concede-form.tsx'
import { PressButton, type ShowsOutcome } from './press-button.tsx'

/** One stage may lack several countersigns. */
const keyOf = (condition: Condition): string =>
  `${condition.rule} ${condition.entity} ${condition.rule === 'countersign' ? condition.party : ''}`

const markOfRule = (condition: Condition): MarkName => {
  switch (condition.rule) {
    case 'hold':
    case 'change-order':
    case 'decision':
      return 'held'
    case 'lacquer-cure':
    case 'least-lag':
    case 'greatest-lag':
    case 'time':
      return 'clock'
    default:
      return 'refused'
  }
}

/**
 * Conditions that aren't met: each with its fact, since when, who can clear it, and the press, the screen or the question that does.
 * With `stage`, those of the gate can also be asked and conceded from here.
 */
export function ConditionList({
  conditions,
  stage,
  outcome,
}: {
  readonly conditions: readonly Condition[]
  readonly stage?: StageId | undefined
  readonly outcome: ShowsOutcome
}) {
  if (conditions.length === 0) return null
  return (
    <ol className="stack tight conds">
      {conditions.map((condition) => (
        <ConditionCard
          key={keyOf(condition)}
          condition={condition}
          stage={stage}
          outcome={outcome}
        />
      ))}
    </ol>
  )
}

function ConditionCard({
  condition,
  stage,
  outcome,
}: {
  readonly condition: Condition
  readonly stage: StageId | undefined
  readonly outcome: ShowsOutcome
}) {
  const { record, reader } = useProject()
  const words = sentence(condition, record, reader)
  const ways = waysTo(condition, record, reader)
  const concedable =
    stage !== undefined && isGateRule(condition) && mayConcede(condition, stage, record, reader)
  const managers = isForManagers(condition, reader)
  const silent = words.who === '' && ways.length === 0 && !concedable
  return (
    <li className="cond cond-no">
      <Mark name={markOfRule(condition)} />
      <div>
        <h3 className="big">{words.fact}</h3>
        {words.detail !== '' && <p>{words.detail}</p>}
        {words.since !== '' && <p className="small soft">{words.since}</p>}
      </div>
      {!silent && (
        <div className="who">
          {words.who !== '' && <p>{words.who}</p>}
          {managers && <p>A manager of {partyName(reader.view.party, record)} presses it.</p>}
          {ways.map((way) => {
            switch (way.way) {
              case 'go':
                return (
                  <Link key="go" className="btn btn-line" href={way.href}>
                    {way.label}
                  </Link>
                )
              case 'press':
                return (
                  <PressButton
                    key="press"
                    name={way.clearing.command}
                    input={way.clearing.input}
                    line
                    outcome={outcome}
                  >
                    {way.label}
                  </PressButton>
                )
              default:
                return stage === undefined ? null : (
                  <AskButton
                    key="ask"
                    condition={condition}
                    stage={stage}
                    to={way.to}
                    outcome={outcome}
                  />
                )
            }
          })}
          {concedable && stage !== undefined && (
            <ConcedeForm condition={condition} stage={stage} outcome={outcome} />
          )}
        </div>
      )}
    </li>
  )
}
