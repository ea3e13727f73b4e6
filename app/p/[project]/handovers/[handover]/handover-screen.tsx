'use client'
import Link from 'next/link'
import { NotHere } from '@/app/_ui/not-here.tsx'
import { PrintButton } from '@/app/_ui/print-button.tsx'
import { UnsentMark } from '@/app/_ui/unsent-mark.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { ToldMarks } from '@/app/p/[project]/stages/[stage]/told-marks.tsx'
import type { Handover } from '@/lib/record/entities/things.ts'
import { ReceiptSlip } from '../receipt-slip.tsx'
import { HandoverNext } from './handover-next.tsx'
import { Remarks } from './remarks.tsx'
import { SoFar } from './so-far.tsx'
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
          <UnsentMark entity={handover.id} />
          <ToldMarks entity={handover.id} />
          <HandoverNext handover={handover} />
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
