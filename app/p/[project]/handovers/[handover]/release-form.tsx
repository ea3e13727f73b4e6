'use client'
import { useState } from 'react'
import { PhotoField } from '@/app/_ui/form/photo-field.tsx'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { readWhole } from '@/app/_ui/form/read-whole.ts'
import { TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { undoMade } from '@/app/_ui/press/done-toast.ts'
import { useRefusedInput } from '@/app/_ui/press/use-refused-input.ts'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { letGoOfField } from '@/lib/live/files/keep-file.ts'
import type { Handover } from '@/lib/record/entities/things.ts'
import type { PartyId } from '@/lib/record/ids.ts'
import { label } from '@/lib/words/labels.ts'
import { partyName } from '@/lib/words/names.ts'
import { piecesIn, whatMoves } from '../handover-facts.ts'

/** Releases a prepared handover: in what condition it goes, how to treat it, how many pieces, photos. */
export function ReleaseForm({
  handover,
  told,
}: {
  readonly handover: Handover
  /** The party that said so by telephone, where the lead enters it for them. */
  readonly told: PartyId | undefined
}) {
  const { record, reader } = useDesk()
  const press = usePress('handover.release', {
    text: 'Released.',
    undo: undoMade('handover', 'handover', {
      name: 'handover.takeBack',
      label: 'Take it back',
      reason: 'Released by mistake',
    }),
  })
  const [condition, setCondition] = useState(handover.condition)
  const [care, setCare] = useState(handover.care)
  const [pieces, setPieces] = useState(String(piecesIn(handover, record)))
  const [files, setFiles] = useState<readonly string[]>(handover.files)
  const [wrong, setWrong] = useState<string>()
  const [pressed, setPressed] = useState(false)
  useRefusedInput(press.command, (input) => {
    setCondition(input.text('condition'))
    setCare(input.text('care'))
    setPieces(input.text('pieces'))
    setFiles(input.list('files'))
  })
  const use = `release ${handover.id}`
  // Told by phone, the words may have stayed on the phone.
  const unsaid = told === undefined && condition.trim() === ''
  const what = whatMoves(handover, record, reader.locale)

  const release = () => {
    const count = readWhole(pieces)
    if (count === null || count < 1) {
      setWrong('Count the pieces that go: a whole number from 1 up.')
      return
    }
    setWrong(undefined)
    if (unsaid) return
    void press
      .send({
        handover: handover.id,
        condition,
        care,
        pieces: count,
        files: [...files],
        ...(told === undefined ? {} : { told }),
      })
      .then((done) => (done ? letGoOfField(use) : undefined))
  }

  return (
    <form
      className="sheet stack"
      onSubmit={(event) => {
        event.preventDefault()
        setPressed(true)
        release()
      }}
    >
      <div className="head">
        <h2>{told === undefined ? 'Release it' : 'Told by phone: released'}</h2>
      </div>
      {told !== undefined && (
        <p className="small">
          You enter this for {partyName(told, record)}. It is marked so until they confirm it.
        </p>
      )}
      <TextField
        label="In what condition does it go?"
        rows={3}
        value={condition}
        onChange={setCondition}
        wrong={
          pressed && unsaid
            ? 'Say what you hand over: “sound, complete” is enough.'
            : press.wrong('condition')
        }
        hint="What is missing, bent, drained, plugged. The receiver sees it beside their own words."
      />
      <TextField
        label="How to treat it"
        rows={3}
        value={care}
        onChange={setCare}
        wrong={press.wrong('care')}
        hint="Lifting points, which way up, what must stay dry. The maker’s data sheet counts before this."
      />
      <TextField
        label="Pieces"
        inputMode="numeric"
        value={pieces}
        onChange={setPieces}
        wrong={wrong ?? press.wrong('pieces')}
      />
      <PhotoField project={record.id} use={use} label="Photos" files={files} onChange={setFiles} />
      <PressFoot
        press={press}
        label={label('handover.release', { name: what })}
        note={`${partyName(handover.to, record)} receives it. Until then ${partyName(handover.from, record, reader)} answer${
          handover.from === reader.view.party ? '' : 's'
        } for it.`}
      />
    </form>
  )
}
