'use client'
import type { ReactNode } from 'react'
import { useDesk } from '@/app/_ui/use-desk.ts'
import type { Handover } from '@/lib/record/entities/things.ts'
import { partyName } from '@/lib/words/names.ts'
import { GuestLink } from './guest-link.tsx'
import { ReceiveForm } from './receive-form.tsx'
import { ReleaseForm } from './release-form.tsx'
import { TakeBack } from './take-back.tsx'

/** Whose press is next, with the press where it is this reader's. */
export function HandoverNext({ handover }: { readonly handover: Handover }) {
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
