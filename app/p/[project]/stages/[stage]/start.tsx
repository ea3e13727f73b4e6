'use client'
import { useState } from 'react'
import { TickField } from '@/app/_ui/form/text-field.tsx'
import { Mark } from '@/app/_ui/mark.tsx'
import { Head, Notice } from '@/app/_ui/paper.tsx'
import { CommandButton } from '@/app/_ui/press/command-button.tsx'
import { ConditionList } from '@/app/_ui/press/condition-list.tsx'
import { Outcome } from '@/app/_ui/press/outcome.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { gateOf } from '@/lib/gate/gate.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import { label, stageNumber } from '@/lib/words/labels.ts'
import { metSentence } from '@/lib/words/met-sentence.ts'
import { partyName } from '@/lib/words/names.ts'
import { Air } from './air.tsx'
import { RootSheet } from './root-sheet.tsx'
import { StartInstead } from './start-instead.tsx'

/** What stands between a stage and its start: the root first, then each condition, then what is met; or the press. */
export function Start({ stage }: { readonly stage: Stage }) {
  const { record, reader } = useDesk()
  const gate = gateOf(record, reader.now)
  const requirements = gate.requirements(stage)
  const unmet = gate.conditions(stage)
  const met = requirements.filter(
    ({ unmet: not, concession }) => not === null || concession !== null,
  )
  const openCount = unmet.length
  return (
    <>
      {openCount > 0 && (
        <Notice mark="refused" no>
          <p>
            <b>{stageNumber(stage.number)} can’t start.</b> {openCount} of {requirements.length}{' '}
            {requirements.length === 1 ? 'condition' : 'conditions'}{' '}
            {openCount === 1 ? 'is' : 'are'} not met.
          </p>
        </Notice>
      )}
      {openCount === 0 && <StartPress stage={stage} />}
      {openCount > 0 ? (
        <div className="cols cols-root">
          <RootSheet stage={stage} />
          <div className="stack">
            <ConditionList conditions={unmet} stage={stage.id} outcome={Outcome} />
            {stage.airAgeMost !== null && <Air stage={stage} />}
            <MetList met={met} of={requirements.length} />
          </div>
          <StartInstead stage={stage} />
        </div>
      ) : (
        <>
          {stage.airAgeMost !== null && <Air stage={stage} />}
          <MetList met={met} of={requirements.length} />
        </>
      )}
    </>
  )
}

type Requirements = ReturnType<ReturnType<typeof gateOf>['requirements']>

/** More of what is met than this lies in a fold: what isn't is the answer. */
const MET_AT_ONCE = 6

function MetList({ met, of }: { readonly met: Requirements; readonly of: number }) {
  const { record, reader } = useDesk()
  if (met.length === 0) return null
  const lines = new Map(
    met.map((requirement) => [
      requirement.concession === null
        ? metSentence(requirement, record, reader)
        : `Conceded: “${requirement.concession.reason}”`,
      requirement.concession === null ? ('met' as const) : ('conceded' as const),
    ]),
  )
  const list = (
    <ol className="cols cols-2 met">
      {[...lines].map(([words, mark]) => (
        <li key={words} className="cond cond-ok">
          <Mark name={mark} />
          <p>{words}</p>
        </li>
      ))}
    </ol>
  )
  if (lines.size > MET_AT_ONCE) {
    return (
      <details>
        <summary>
          Met: {met.length} of {of}
        </summary>
        {list}
      </details>
    )
  }
  return (
    <section className="stack tight">
      <Head title="Met" note={`${met.length} of ${of}`} />
      {list}
    </section>
  )
}

/** The start, for who works on it; for the lead also as told by phone. */
function StartPress({ stage }: { readonly stage: Stage }) {
  const { record, standing } = useDesk()
  const [told, setTold] = useState(false)
  const name = partyName(stage.party, record)
  const own = standing.actsFor(stage.party)
  if (!own && !standing.managesLead) {
    return (
      <div className="sheet">
        <p>
          Every condition is met. <b>{name}</b> may start it.
        </p>
      </div>
    )
  }
  return (
    <div className="sheet stack tight">
      {!own && (
        <TickField
          label={`${name} told me by phone`}
          hint="It is marked so until they confirm it."
          checked={told}
          onChange={setTold}
        />
      )}
      {own || told ? (
        <CommandButton
          name="stage.start"
          input={{ stage: stage.id, ...(own ? {} : { told: stage.party }) }}
          stage={stage.id}
          wide
          done={{
            text: `${stageNumber(stage.number)} is in work.`,
            undo: {
              label: 'Take back',
              name: 'stage.takeBack',
              input: { stage: stage.id, reason: 'Pressed by mistake' },
            },
          }}
        >
          {label('stage.start', stage)}
        </CommandButton>
      ) : (
        <p>
          Every condition is met. <b>{name}</b> may start it.
        </p>
      )}
    </div>
  )
}
