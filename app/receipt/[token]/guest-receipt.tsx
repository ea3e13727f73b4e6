'use client'
import { useState } from 'react'
import * as z from 'zod/mini'
import { askServer, posting } from '@/app/_ui/door/ask-server.ts'
import { FingerSignature } from '@/app/_ui/form/finger-signature.tsx'
import { PhotoField } from '@/app/_ui/form/photo-field.tsx'
import { TextField } from '@/app/_ui/form/text-field.tsx'
import { PrintButton } from '@/app/_ui/print-button.tsx'
import {
  emptyReceipt,
  ReceiveFields,
  readReceipt,
} from '@/app/p/[project]/handovers/receive-fields.tsx'
import type { Receipt } from '@/lib/command/wire-access.ts'
import { isSigned } from '@/lib/custody/signature.ts'
import { letGoOfField } from '@/lib/live/files/keep-file.ts'
import { sendWaitingFiles } from '@/lib/live/files/send-waiting-file.ts'
import { useLocale, useNow } from '@/lib/live/live-provider.tsx'
import { Handover } from '@/lib/record/entities/things.ts'
import { listed } from '@/lib/words/names.ts'
import { GuestLeaf } from './guest-leaf.tsx'

const Received = z.object({ handover: Handover })

/** One handover for somebody without an account: what comes, and the receipt by name, count and finger. */
export function GuestReceipt({
  token,
  initial,
}: {
  readonly token: string
  readonly initial: Receipt
}) {
  const locale = useLocale()
  const now = useNow()
  const [handover, setHandover] = useState(initial.handover)
  const [draft, setDraft] = useState(emptyReceipt)
  const [name, setName] = useState('')
  const [signature, setSignature] = useState('')
  const [files, setFiles] = useState<readonly string[]>([])
  const [pressed, setPressed] = useState(false)
  const use = `receipt ${handover.id}`
  const [waiting, setWaiting] = useState(false)
  const [wrong, setWrong] = useState<string>()
  const place = { locale, timeZone: initial.timeZone, now }
  const pieces =
    handover.pieces ?? initial.assemblies.reduce((sum, assembly) => sum + assembly.pieces, 0)
  const read = readReceipt(draft, pieces)
  const what = listed(
    initial.assemblies.map((assembly) => assembly.name),
    locale,
  )
  const nameWrong = name.trim() === '' ? 'Write your name: it stands on the receipt.' : undefined
  const unsigned = isSigned(signature)
    ? undefined
    : 'Sign in the field above with a finger, or with a cross.'

  const receive = async () => {
    setPressed(true)
    if (!read.ok || nameWrong !== undefined || unsigned !== undefined) return
    setWaiting(true)
    setWrong(undefined)
    const sent = files.length === 0 ? null : await sendWaitingFiles(null)
    if (sent?.is === 'waits') {
      setWaiting(false)
      setWrong('There is no signal. The photos are kept on this phone; press again when there is.')
      return
    }
    const answer = await askServer(
      Received,
      `/api/receipts/${token}`,
      posting({ ...read.input, files, receivedByName: name.trim(), signature }),
    )
    setWaiting(false)
    if (!answer.ok) {
      setWrong(answer.message)
      return
    }
    await letGoOfField(use)
    setHandover(answer.data.handover)
  }

  return (
    <div className="cols cols-main">
      <GuestLeaf token={token} receipt={initial} handover={handover} place={place} />
      {handover.state === 'released' ? (
        <form
          className="sheet stack"
          noValidate
          onSubmit={(event) => {
            event.preventDefault()
            void receive()
          }}
        >
          <div className="head">
            <h2>Receive it</h2>
          </div>
          <TextField
            label="Your name"
            autoComplete="name"
            value={name}
            onChange={setName}
            wrong={pressed ? nameWrong : undefined}
          />
          <ReceiveFields
            receipt={draft}
            onChange={setDraft}
            pieces={pieces}
            wrong={pressed && !read.ok ? read.wrong : {}}
          />
          <PhotoField
            project={handover.project}
            folder={`/api/receipts/${token}/files`}
            use={use}
            label="Photos as received"
            files={files}
            onChange={setFiles}
          />
          <div className="field">
            <span>Your signature</span>
            <FingerSignature path={signature} onChange={setSignature} disabled={waiting} />
            {pressed && unsigned !== undefined && (
              <p className="wrong" role="alert">
                {unsigned}
              </p>
            )}
          </div>
          {wrong !== undefined && (
            <p className="wrong" role="alert">
              {wrong}
            </p>
          )}
          <button type="submit" className="btn btn-wide" disabled={waiting}>
            {waiting
              ? 'Sending…'
              : draft.outcome === 'refused'
                ? `Refuse ${what}`
                : `Receive ${what}`}
          </button>
          <p className="small soft">
            {draft.outcome === 'refused'
              ? `It stays with ${initial.from}.`
              : `From then on ${initial.to} answers for ${what}.`}
          </p>
        </form>
      ) : (
        <div className="stack">
          <section className="sheet stack" role="status">
            <p className="big">
              {handover.state === 'received'
                ? `${initial.to} answers for ${what} now.`
                : handover.state === 'refused'
                  ? `Refused. ${initial.from} still answers for ${what}.`
                  : 'There is nothing to receive here any more.'}
            </p>
          </section>
          <PrintButton label="Print this leaf" />
        </div>
      )}
    </div>
  )
}
