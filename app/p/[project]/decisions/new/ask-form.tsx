'use client'
import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { SelectField, TextField, TickField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { Head } from '@/app/_ui/paper.tsx'
import { KeptSheet } from '@/app/_ui/press/kept-sheet.tsx'
import { partiesHere, useDesk } from '@/app/_ui/use-desk.ts'
import { ownerOf } from '@/lib/record/actor.ts'
import { all } from '@/lib/record/table.ts'
import { label, stageNumber } from '@/lib/words/labels.ts'
import { readAmount } from '@/lib/words/read-amount.ts'

interface OptionDraft {
  readonly key: string
  readonly text: string
  readonly net: string
}
let made = 0
const blank = (): OptionDraft => ({ key: `option ${++made}`, text: '', net: '' })

/** Puts a choice before somebody: a question, at least two options, what each adds to the bill, and the stages that wait for it. */
export function AskForm() {
  const { record, reader, standing } = useDesk()
  const router = useRouter()
  const press = usePress('decision.ask')
  const [kept, setKept] = useState(false)
  const [question, setQuestion] = useState('')
  const [text, setText] = useState('')
  const [chooser, setChooser] = useState<string>(ownerOf(record)?.id ?? '')
  const [decideBy, setDecideBy] = useState('')
  const [options, setOptions] = useState<readonly OptionDraft[]>(() => [blank(), blank()])
  const [stages, setStages] = useState<ReadonlySet<string>>(new Set())
  const [pressed, setPressed] = useState(false)
  const waiting = all(record.stages).filter(
    (stage) =>
      stage.removedAt === null &&
      stage.state === 'planned' &&
      stage.decision === null &&
      (stage.party === standing.party || standing.managesLead),
  )
  const typed = options.filter(({ text: words, net }) => words.trim() !== '' || net.trim() !== '')
  const faults = {
    question: question.trim() === '' ? 'Write the question, as you would ask it.' : undefined,
    chooser: chooser === '' ? 'Choose who is to decide.' : undefined,
    options: typed.length < 2 ? 'Give at least two options.' : undefined,
  }
  const optionWrong = (option: OptionDraft) => ({
    text: option.text.trim() === '' && option.net.trim() !== '' ? 'Name the option.' : undefined,
    net:
      option.net.trim() !== '' && readAmount(option.net, reader.currency) === null
        ? 'A sum such as 120.00, or leave it empty.'
        : undefined,
  })
  const put = (key: string, part: Partial<OptionDraft>) =>
    setOptions(options.map((option) => (option.key === key ? { ...option, ...part } : option)))

  const ask = async () => {
    setPressed(true)
    const optionFaults = typed.some((option) => {
      const wrong = optionWrong(option)
      return wrong.text !== undefined || wrong.net !== undefined
    })
    if (Object.values(faults).some((fault) => fault !== undefined) || optionFaults) return
    const outcome = await press.command.send({
      question: question.trim(),
      text,
      chooser,
      ...(decideBy === '' ? {} : { decideBy }),
      options: typed.map((option) => ({
        text: option.text.trim(),
        net: readAmount(option.net, reader.currency),
      })),
      stages: [...stages],
    })
    setKept(outcome.status === 'kept')
    if (outcome.status !== 200) return
    const decision = outcome.changed
      .flatMap(({ entities }) => entities)
      .find((entity) => entity.kind === 'decision')
    router.push(`/p/${record.id}/decisions${decision === undefined ? '' : `/${decision.id}`}`)
  }

  if (kept) return <KeptSheet href={`/p/${record.id}/decisions`} label="All decisions" />
  return (
    <form
      className="sheet stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        void ask()
      }}
    >
      <Head title="Ask for a decision" />
      <TextField
        label="The question"
        value={question}
        onChange={setQuestion}
        wrong={pressed ? faults.question : press.wrong('question')}
        placeholder="Which leather for the seats?"
      />
      <TextField label="What to know before choosing" rows={3} value={text} onChange={setText} />
      <SelectField
        label="Who decides"
        value={chooser}
        onChange={setChooser}
        none="Choose a party"
        options={partiesHere(record)
          .filter((party) => party.role !== 'observer' && party.id !== standing.party)
          .map(({ id, name }) => ({ value: id, label: name }))}
        wrong={pressed ? faults.chooser : press.wrong('chooser')}
      />
      <TextField
        label="Decide by"
        type="date"
        value={decideBy}
        onChange={setDecideBy}
        wrong={press.wrong('decideBy')}
        hint="The last day on which the choice costs nobody a day. Empty where there is none."
      />
      {options.map((option, n) => {
        const wrong = pressed ? optionWrong(option) : { text: undefined, net: undefined }
        return (
          <fieldset key={option.key} className="line-draft">
            <legend>Option {n + 1}</legend>
            <div className="line-text">
              <TextField
                label="What"
                value={option.text}
                onChange={(words) => put(option.key, { text: words })}
                wrong={wrong.text}
              />
            </div>
            <TextField
              label="Adds to the bill, before tax"
              value={option.net}
              onChange={(net) => put(option.key, { net })}
              wrong={wrong.net}
            />
            {options.length > 2 && (
              <button
                type="button"
                className="btn btn-line line-away"
                onClick={() => setOptions(options.filter(({ key }) => key !== option.key))}
              >
                Strike option {n + 1}
              </button>
            )}
          </fieldset>
        )
      })}
      {pressed && faults.options !== undefined && <p className="wrong">{faults.options}</p>}
      <button
        type="button"
        className="btn btn-line"
        onClick={() => setOptions([...options, blank()])}
      >
        Another option
      </button>
      {waiting.length > 0 && (
        <details>
          <summary>Stages that wait for it ({stages.size})</summary>
          <fieldset className="picks">
            <legend>They are held until the choice is made</legend>
            {waiting.map((stage) => (
              <TickField
                key={stage.id}
                label={`${stageNumber(stage.number)} · ${stage.name}`}
                checked={stages.has(stage.id)}
                onChange={(on) => {
                  const next = new Set(stages)
                  if (on) next.add(stage.id)
                  else next.delete(stage.id)
                  setStages(next)
                }}
              />
            ))}
          </fieldset>
        </details>
      )}
      <PressFoot press={press} label={label('decision.ask')} />
    </form>
  )
}
