'use client'
import Link from 'next/link'
import { useDesk } from '@/app/_ui/use-desk.ts'
import type { AssemblyId } from '@/lib/record/ids.ts'
import { moment, since } from '@/lib/words/dates.ts'
import { atStart, partyName } from '@/lib/words/names.ts'
import { inOrder } from '../handover-facts.ts'

/** Where each assembly has been, handover by handover, and who answers for it now. */
export function SoFar({ assemblies }: { readonly assemblies: readonly AssemblyId[] }) {
  const { record, reader } = useDesk()
  return assemblies.map((id) => {
    const assembly = record.assemblies.rows.get(id)
    if (assembly === undefined) return null
    const past = inOrder(record).filter(
      (handover) => handover.assemblies.includes(id) && handover.receivedAt !== null,
    )
    return (
      <section key={id} className="sheet stack tight">
        <div className="head">
          <h2>{assembly.name}, so far</h2>
        </div>
        <ol className="string">
          {past.map((handover) => (
            <li key={handover.id} className="past">
              <h3>
                {handover.state === 'refused' ? 'Refused by ' : 'To '}
                {partyName(handover.to, record)}
              </h3>
              <p className="small">
                <Link href={`/p/${record.id}/handovers/${handover.id}`}>
                  {handover.receivedAt !== null && moment(handover.receivedAt, reader)}
                </Link>
                {handover.outcome !== null && ` · ${handover.outcome}`}
              </p>
            </li>
          ))}
          <li>
            <h3>{atStart(partyName(assembly.custodian, record))}</h3>
            <p className="small">{since(assembly.since, reader)}</p>
          </li>
        </ol>
      </section>
    )
  })
}
