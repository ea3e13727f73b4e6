'use client'
import { useState } from 'react'
import { PhotoField } from '@/app/_ui/form/photo-field.tsx'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { useRefusedInput } from '@/app/_ui/press/use-refused-input.ts'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { letGoOfField } from '@/lib/live/files/keep-file.ts'
import type { Handover } from '@/lib/record/entities/things.ts'
import type { PartyId } from '@/lib/record/ids.ts'
import { label } from '@/lib/words/labels.ts'
import { partyName } from '@/lib/words/names.ts'
import { piecesIn, whatMoves } from '../handover-facts.ts'
import { emptyReceipt, OUTCOMES, ReceiveFields, readReceipt } from '../receive-fields.tsx'

/** Receives what was released: accepted, accepted with remarks, or refused; counted, with photos. */
export function ReceiveForm({
  handover,
  told,
}: {
  readonly handover: Handover
  readonly told: PartyId | undefined
}) {
  const { record, reader } = useDesk()
  const press = usePress('handover.receive')
  const [receipt, setReceipt] = useState(emptyReceipt)
  const [files, setFiles] = useState<readonly string[]>([])
  const [pressed, setPressed] = useState(false)
  useRefusedInput(press.command, (input) => {
    setReceipt({
      outcome: OUTCOMES.find((one) => input.is('outcome', one)) ?? null,
      pieces: input.text('pieces'),
      remarks: input.text('remarks'),
    })
    setFiles(input.list('files'))
  })
  const use = `receive ${handover.id}`
  const pieces = piecesIn(handover, record)
  const read = readReceipt(receipt, pieces)
  const what = whatMoves(handover, record, reader.locale)

  return (
    <form
      className="sheet stack"
      onSubmit={(event) => {
        event.preventDefault()
        setPressed(true)
        if (!read.ok) return
        void press
          .send({
            handover: handover.id,
            ...read.input,
            files: [...files],
            ...(told === undefined ? {} : { told }),
          })
          .then((done) => (done ? letGoOfField(use) : undefined))
      }}
    >
      <div className="head">
        <h2>{told === undefined ? 'Receive it' : 'Told by phone: received'}</h2>
      </div>
      {told !== undefined && (
        <p className="small">
          You enter this for {partyName(told, record)}. It is marked so until they confirm it.
        </p>
      )}
      <ReceiveFields
        receipt={receipt}
        onChange={setReceipt}
        pieces={pieces}
        wrong={pressed && !read.ok ? read.wrong : {}}
      />
      <PhotoField
        project={record.id}
        use={use}
        label="Photos as received"
        files={files}
        onChange={setFiles}
      />
      <PressFoot
        press={press}
        label={
          receipt.outcome === 'refused'
            ? `Refuse ${what}`
            : label('handover.receive', { name: what })
        }
        note={
          receipt.outcome === 'refused'
            ? `It stays with ${partyName(handover.from, record)}, who still answers for it.`
            : `From this press ${partyName(handover.to, record, reader)} answer${
                handover.to === reader.view.party ? '' : 's'
              } for ${what}.`
        }
      />
    </form>
  )
}
