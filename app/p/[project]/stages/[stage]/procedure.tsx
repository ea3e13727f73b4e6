'use client'
import Link from 'next/link'
import { TickField } from '@/app/_ui/form/text-field.tsx'
import { projectPath } from '@/app/_ui/paths.ts'
import { Outcome } from '@/app/_ui/press/outcome.tsx'
import { UnsentMark } from '@/app/_ui/unsent-mark.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { stepsOf } from '@/lib/build-order/steps.ts'
import { useCommand } from '@/lib/live/use-command.ts'
import type { Step } from '@/lib/record/entities/evidence.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import { moment } from '@/lib/words/dates.ts'
import { personName } from '@/lib/words/names.ts'

const WORKED_ON: ReadonlySet<string> = new Set(['in work', 'paused', 'ended', 'in doubt'])

/** The steps of a stage, ticked one by one while it is worked on. */
export function Procedure({ stage }: { readonly stage: Stage }) {
  const { record, standing } = useDesk()
  const steps = stepsOf(record, stage.id)
  const done = steps.filter(({ tickedAt }) => tickedAt !== null).length
  const ticks = WORKED_ON.has(stage.state) && standing.actsFor(stage.party)
  return (
    <>
      {steps.length > 0 && (
        <details>
          <summary>
            Procedure: {done} of {steps.length} steps done
          </summary>
          <ol className="steps">
            {steps.map((step, i) => (
              <StepRow key={step.id} step={step} place={i + 1} ticks={ticks} />
            ))}
          </ol>
        </details>
      )}
      <p className="way small">
        <Link href={projectPath(record.id, `stages/${stage.id}/job-card`)} prefetch={false}>
          Job card to print
        </Link>
      </p>
    </>
  )
}

function StepRow({
  step,
  place,
  ticks,
}: {
  readonly step: Step
  readonly place: number
  readonly ticks: boolean
}) {
  const { reader } = useDesk()
  const tick = useCommand('step.tick', undefined, { step: step.id })
  const said = (
    <>
      {step.text}
      {step.tools.length > 0 && <span className="small"> · {step.tools.join(', ')}</span>}
    </>
  )
  return (
    <li className="stack tight">
      {ticks ? (
        <TickField
          label={
            <>
              <b>{place}.</b> {said}
            </>
          }
          checked={step.tickedAt !== null}
          onChange={(done) => void tick.send({ step: step.id, done })}
        />
      ) : (
        <p>
          <b>{place}.</b> {said}
        </p>
      )}
      {step.caution !== null && (
        <p className="small">
          <b>Care:</b> {step.caution}
        </p>
      )}
      {step.tickedAt !== null && (
        <p className="small soft">
          Done by {personName(step.tickedBy, reader.people)}, {moment(step.tickedAt, reader)}
        </p>
      )}
      <UnsentMark entity={step.id} />
      <Outcome press={tick} />
    </li>
  )
}
