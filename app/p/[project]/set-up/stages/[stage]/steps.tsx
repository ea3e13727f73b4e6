'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { Head } from '@/app/_ui/paper.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { stepsOf } from '@/lib/build-order/steps.ts'
import type { Step } from '@/lib/record/entities/evidence.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import { label } from '@/lib/words/labels.ts'

/** What a card says after its colon or comma: `Torque wrench, M10 socket`. */
const toolsOf = (typed: string): string[] =>
  typed
    .split(',')
    .map((tool) => tool.trim())
    .filter((tool) => tool !== '')

/** The procedure of a stage: its steps in order, each with its tools and what to take care of. */
export function Steps({ stage, sets }: { readonly stage: Stage; readonly sets: boolean }) {
  const { record } = useDesk()
  const steps = stepsOf(record, stage.id)
  const open = stage.state !== 'signed off' && stage.state !== 'in doubt'
  return (
    <section className="sheet stack">
      <Head title="Procedure" note={String(steps.length)} />
      {steps.length === 0 && (
        <p className="soft">No steps. The card then shows the checks alone.</p>
      )}
      <ol className="ruled">
        {steps.map((step, i) => (
          <li key={step.id} className="stack tight">
            <p>
              <b>{i + 1}.</b> {step.text}
            </p>
            {step.tools.length > 0 && <p className="small">Tools: {step.tools.join(', ')}</p>}
            {step.caution !== null && <p className="small">Care: {step.caution}</p>}
            {sets && open && step.tickedAt === null && (
              <EditStep key={step.id} step={step} place={i + 1} last={steps.length} />
            )}
          </li>
        ))}
      </ol>
      {sets && open && <AddStep stage={stage} />}
    </section>
  )
}

function StepFields({
  text,
  tools,
  caution,
  wrong,
  onText,
  onTools,
  onCaution,
}: {
  readonly text: string
  readonly tools: string
  readonly caution: string
  readonly wrong: string | undefined
  readonly onText: (text: string) => void
  readonly onTools: (tools: string) => void
  readonly onCaution: (caution: string) => void
}) {
  return (
    <>
      <TextField label="What is done" rows={2} value={text} onChange={onText} wrong={wrong} />
      <TextField label="Tools" value={tools} onChange={onTools} hint="With commas between." />
      <TextField
        label="Take care"
        value={caution}
        onChange={onCaution}
        hint="The maker’s sheet comes first."
      />
    </>
  )
}

function AddStep({ stage }: { readonly stage: Stage }) {
  const press = usePress('step.add', 'The step is on the card.', { stage: stage.id })
  const [text, setText] = useState('')
  const [tools, setTools] = useState('')
  const [caution, setCaution] = useState('')
  const [pressed, setPressed] = useState(false)
  return (
    <form
      className="stack"
      noValidate
      onSubmit={async (event) => {
        event.preventDefault()
        setPressed(true)
        if (text.trim() === '') return
        const input = {
          stage: stage.id,
          text: text.trim(),
          tools: toolsOf(tools),
          caution: caution.trim() || null,
        }
        if (!(await press.send(input))) return
        setText('')
        setTools('')
        setCaution('')
        setPressed(false)
      }}
    >
      <h3>Another step</h3>
      <StepFields
        text={text}
        tools={tools}
        caution={caution}
        wrong={pressed && text.trim() === '' ? 'Say what is done.' : press.wrong('text')}
        onText={setText}
        onTools={setTools}
        onCaution={setCaution}
      />
      <PressFoot press={press} lined label={label('step.add')} />
    </form>
  )
}

function EditStep({
  step,
  place,
  last,
}: {
  readonly step: Step
  readonly place: number
  readonly last: number
}) {
  const press = usePress('step.describe', 'Saved.', { step: step.id })
  const off = usePress('step.remove', 'It is off the card.', { step: step.id })
  const [text, setText] = useState(step.text)
  const [tools, setTools] = useState(step.tools.join(', '))
  const [caution, setCaution] = useState(step.caution ?? '')
  const move = (to: number) => void press.send({ step: step.id, place: to })
  return (
    <details>
      <summary>Change step {place}</summary>
      <form
        className="stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault()
          if (text.trim() === '') return
          void press.send({
            step: step.id,
            text: text.trim(),
            tools: toolsOf(tools),
            caution: caution.trim() || null,
          })
        }}
      >
        <StepFields
          text={text}
          tools={tools}
          caution={caution}
          wrong={text.trim() === '' ? 'Say what is done.' : press.wrong('text')}
          onText={setText}
          onTools={setTools}
          onCaution={setCaution}
        />
        <PressFoot press={press} lined label={label('step.describe')} />
        <div className="row">
          <button
            type="button"
            className="btn btn-line btn-small"
            disabled={place === 1 || press.waiting}
            onClick={() => move(place - 1)}
          >
            Earlier
          </button>
          <button
            type="button"
            className="btn btn-line btn-small"
            disabled={place === last || press.waiting}
            onClick={() => move(place + 1)}
          >
            Later
          </button>
          <button
            type="button"
            className="btn btn-line btn-small"
            disabled={off.waiting}
            onClick={() => void off.send({ step: step.id })}
          >
            {label('step.remove')}
          </button>
        </div>
      </form>
    </details>
  )
}
