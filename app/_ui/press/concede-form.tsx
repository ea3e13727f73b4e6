'use client'
import { lazy, Suspense, useState } from 'react'
import { TextField } from '@/app/_ui/form/text-field.tsx'
import { needsSheet } from '@/lib/gate/who-concedes.ts'
import { letGoOfField } from '@/lib/live/files/keep-file.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import { useCommand } from '@/lib/live/use-command.ts'
import { leadOf } from '@/lib/record/actor.ts'
import type { Condition } from '@/lib/record/condition.ts'
import type { StageId } from '@/lib/record/ids.ts'
import type { ProjectRecord } from '@/lib/record/project-record.ts'
import { label } from '@/lib/words/labels.ts'
import { listed, partyName } from '@/lib/words/names.ts'
import type { Reader } from '@/lib/words/reader.ts'
import type { ShowsOutcome } from './press-button.tsx'
import { useRefusedInput } from './use-refused-input.ts'

/** Few rules are conceded with a paper: no other concession loads what takes one. */
const SheetField = lazy(async () => {
  const { PhotoField } = await import('@/app/_ui/form/photo-field.tsx')
  return { default: PhotoField }
})

/** May this reader concede it: the stage's party and the lead, by their managers. */
export function mayConcede(
  condition: Condition,
  stage: StageId,
  record: ProjectRecord,
  reader: Reader,
): boolean {
  if (!condition.concedable || reader.view.role === 'hand') return false
  const { party } = reader.view
  return record.stages.rows.get(stage)?.party === party || leadOf(record)?.id === party
}

/** Accepts an unmet condition, with a reason that stays on the card for good. */
export function ConcedeForm({
  condition,
  stage,
  outcome: Outcome,
}: {
  readonly condition: Condition
  readonly stage: StageId
  readonly outcome: ShowsOutcome
}) {
  const { record, reader } = useProject()
  const use = `concede ${stage} ${condition.entity}`
  const press = useCommand('condition.concede', () => void letGoOfField(use), {
    stage,
    rule: condition.rule,
    entity: condition.entity,
  })
  const [open, setOpen] = useState(false)
  const [reason, setReason] = useState('')
  const [files, setFiles] = useState<readonly string[]>([])
  const sheetWanted = needsSheet(condition.rule)
  useRefusedInput(press, (refused) => {
    setReason(refused.text('reason'))
    setOpen(true)
  })
  const begun = [...record.concessions.rows.values()].find(
    (concession) =>
      concession.withdrawnAt === null &&
      concession.stage === stage &&
      concession.rule === condition.rule &&
      concession.entity === condition.entity,
  )
  const missing = (begun?.needs ?? []).filter((party) => !(begun?.parties ?? []).includes(party))
  if (begun !== undefined && !missing.includes(reader.view.party)) {
    const names = missing.map((party) => partyName(party, record, reader))
    return (
      <p className="small">
        You conceded it. It counts once {listed(names, reader.locale)} concedes it too.
      </p>
    )
  }
  if (!open) {
    return (
      <button type="button" className="btn btn-line" onClick={() => setOpen(true)}>
        {label('condition.concede')}
      </button>
    )
  }
  return (
    <form
      className="stack tight"
      onSubmit={(event) => {
        event.preventDefault()
        const [file] = files
        const sheet = sheetWanted && file !== undefined ? { file } : {}
        void press.send({ stage, rule: condition.rule, entity: condition.entity, reason, ...sheet })
      }}
    >
      {begun !== undefined && <p className="small">The other party wrote: “{begun.reason}”</p>}
      <TextField
        label="Why it may be passed"
        hint="It stays on the card for good, with your name."
        rows={2}
        value={reason}
        onChange={setReason}
        required
      />
      {sheetWanted && (
        <Suspense fallback={null}>
          <SheetField
            project={record.id}
            use={use}
            label="The maker’s data sheet"
            files={files}
            onChange={setFiles}
          />
        </Suspense>
      )}
      <button type="submit" className="btn" aria-busy={press.waiting}>
        {press.waiting ? 'Sending…' : 'Concede it'}
      </button>
      <Outcome press={press} />
    </form>
  )
}
