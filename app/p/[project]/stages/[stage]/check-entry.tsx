'use client'
import { type FormEvent, useState } from 'react'
import { PhotoField } from '@/app/_ui/form/photo-field.tsx'
import { buzz } from '@/app/_ui/phone/buzz.ts'
import { Outcome } from '@/app/_ui/press/outcome.tsx'
import { useRefusedInput } from '@/app/_ui/press/use-refused-input.ts'
import { isWithin } from '@/lib/build-order/within-limits.ts'
import { letGoOfField } from '@/lib/live/files/keep-file.ts'
import { usePressesHere } from '@/lib/live/outbox/use-presses-here.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import { useCommand } from '@/lib/live/use-command.ts'
import type { Json } from '@/lib/record/condition.ts'
import type { Check, Stage } from '@/lib/record/entities/work.ts'
import type { PartyId } from '@/lib/record/ids.ts'
import { readQuantity } from '@/lib/words/read-amount.ts'
import { ReadingField } from './reading-field.tsx'

/** Where the evidence of a check is entered: a big figure, a tick, photos, a document. What was typed stays until it is in. */
export function CheckEntry({
  stage,
  check,
  told,
}: {
  readonly stage: Stage
  readonly check: Check
  readonly told: PartyId | undefined
}) {
  const [again, setAgain] = useState(false)
  const { refused } = usePressesHere('check.record', { check: check.id })
  // What is told by phone is the exception: it doesn't stand open on the lead's screen.
  if ((check.state === 'passed' || told !== undefined) && !again && refused.length === 0) {
    return (
      <div className="enter">
        <button type="button" className="btn btn-line btn-small" onClick={() => setAgain(true)}>
          {openLabel(check, told !== undefined)}
        </button>
      </div>
    )
  }
  return <EntryForm stage={stage} check={check} told={told} done={() => setAgain(false)} />
}

function openLabel(check: Check, told: boolean): string {
  if (told) return 'Told by phone: enter it'
  return check.type === 'reading' ? 'Read again' : 'Enter again'
}

function EntryForm({
  stage,
  check,
  told,
  done,
}: {
  readonly stage: Stage
  readonly check: Check
  readonly told: PartyId | undefined
  readonly done: () => void
}) {
  const { record } = useProject()
  const [typed, setTyped] = useState('')
  const [wrong, setWrong] = useState('')
  const [files, setFiles] = useState<readonly string[]>([])
  const use = `check ${check.id}`
  const press = useCommand(
    'check.record',
    () => {
      setTyped('')
      setFiles([])
      void letGoOfField(use)
      done()
    },
    { check: check.id },
  )
  useRefusedInput(press, (input) => {
    setTyped(input.text('value'))
    setFiles(input.list('files'))
  })

  const enter = (evidence: { readonly [field: string]: Json }) =>
    void press.send({ check: check.id, ...evidence, ...(told === undefined ? {} : { told }) })
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (press.waiting) return
    if (check.type !== 'reading') {
      enter(files.length === 0 ? {} : { files: [...files] })
      return
    }
    const value = readQuantity(typed)
    setWrong(value === null ? 'Type the figure alone, such as 3.9' : '')
    if (value === null) return
    if (!isWithin(check, value)) buzz('amiss')
    enter({ value })
  }
  const waits = press.waiting ? 'Sending…' : 'Enter'
  return (
    <form className="enter stack tight" onSubmit={onSubmit}>
      {check.type === 'reading' && (
        <ReadingField
          check={check}
          typed={typed}
          onChange={(next) => {
            setTyped(next)
            setWrong('')
          }}
          wrong={wrong}
          waiting={press.waiting}
        />
      )}
      {check.type === 'tick' && (
        <button type="submit" className="btn btn-line btn-wide">
          {press.waiting ? 'Sending…' : 'Tick it'}
        </button>
      )}
      {(check.type === 'photo' || check.type === 'document') && (
        <>
          <PhotoField
            project={record.id}
            use={use}
            label={check.type === 'photo' ? 'Photos' : 'Document'}
            files={files}
            onChange={setFiles}
          />
          {files.length > 0 && (
            <button type="submit" className="btn btn-line btn-wide">
              {waits}
            </button>
          )}
        </>
      )}
      {told !== undefined && (
        <p className="small">Entered as told by phone by {record.parties.rows.get(told)?.name}.</p>
      )}
      <Outcome press={press} stage={stage.id} />
    </form>
  )
}
