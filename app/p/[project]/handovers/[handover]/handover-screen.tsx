'use client'
import Link from 'next/link'
import type { ReactNode } from 'react'
import { NotHere } from '@/app/_ui/not-here.tsx'
import { PrintButton } from '@/app/_ui/print-button.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { ToldMarks } from '@/app/p/[project]/stages/[stage]/told-marks.tsx'
import type { Handover } from '@/lib/record/entities/things.ts'
import { partyName } from '@/lib/words/names.ts'
import { ReceiptSlip } from '../receipt-slip.tsx'
import { GuestLink } from './guest-link.tsx'
import { ReceiveForm } from './receive-form.tsx'
import { ReleaseForm } from './release-form.tsx'
import { Remarks } from './remarks.tsx'
import { SoFar } from './so-far.tsx'
import { TakeBack } from './take-back.tsx'
import { WhatItMoved } from './what-it-moved.tsx'

/** One handover: what is to be pressed now, its leaf, and what it moves. */
export function HandoverScreen({ id }: { readonly id: string }) {
  const { record } = useDesk()
  const handover = record.handovers.rows.get(id)
  if (handover === undefined) return <NotHere what="handover" href={`/p/${record.id}/handovers`} />
  return (
    <div className="stack">
      <p className="way no-print">
        <Link href={`/p/${record.id}/handovers`}>All handovers</Link>
      </p>
      <div className="cols cols-main">
        <ReceiptOf handover={handover} />
        <div className="stack">
          <ToldMarks entity={handover.id} />
          <Next handover={handover} />
          <WhatItMoved handover={handover} />
          <SoFar assemblies={handover.assemblies} />
          {handover.receivedAt !== null && <Remarks handover={handover} />}
          <PrintButton
            label={handover.receivedAt === null ? 'Print this leaf' : 'Print both leaves'}
          />
        </div>
      </div>
    </div>
  )
}

function ReceiptOf({ handover }: { readonly handover: Handover }) {
  const { record, reader } = useDesk()
  return <ReceiptSlip handover={handover} record={record} reader={reader} />
}

/** Whose press is next, with the press where it is this reader's. */
function Next({ handover }: { readonly handover: Handover }) {
  const { record, reader, standing } = useDesk()
  const { from, to, state } = handover
  const releases = standing.actsFor(from)
  const receives = standing.actsFor(to)
  if (state === 'prepared') {
    if (releases) return <ReleaseForm handover={handover} told={undefined} />
    if (standing.managesLead) {
      return (
        <ByPhone party={partyName(from, record)}>
          <ReleaseForm handover={handover} told={from} />
        </ByPhone>
      )
    }
    return <Whose>{partyName(from, record)} releases it; nobody else can.</Whose>
  }
  if (state === 'released') {
    return (
      <>
        {receives && <ReceiveForm handover={handover} told={undefined} />}
        {(releases || standing.managesLead) && <GuestLink handover={handover} />}
        {releases && <TakeBack handover={handover} />}
        {!receives && standing.managesLead && (
          <ByPhone party={partyName(to, record)}>
            <ReceiveForm handover={handover} told={to} />
          </ByPhone>
        )}
        {!receives && !releases && !standing.managesLead && (
          <Whose>
            {partyName(to, record, reader)} receives it; until then {partyName(from, record)}{' '}
            answers for it.
          </Whose>
        )}
      </>
    )
  }
  return null
}

/** The exception, so it doesn't stand open on the lead's screen. */
function ByPhone({ party, children }: { readonly party: string; readonly children: ReactNode }) {
  return (
    <details className="no-print">
      <summary>{party} told it by phone</summary>
      {children}
    </details>
  )
}

function Whose({ children }: { readonly children: ReactNode }) {
  return (
    <section className="sheet">
      <p>{children}</p>
    </section>
  )
}
