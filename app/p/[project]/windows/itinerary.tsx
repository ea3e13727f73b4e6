'use client'
import Link from 'next/link'
import { Head } from '@/app/_ui/paper.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { Assembly } from '@/lib/record/entities/things.ts'
import { all } from '@/lib/record/table.ts'
import { exactSpan, since } from '@/lib/words/dates.ts'
import { atStart, partyName } from '@/lib/words/names.ts'

/** Where an assembly is and goes: who has it now, then its slots in their order; what is only asked hangs loose. */
export function Itinerary({ assembly }: { readonly assembly: Assembly }) {
  const { record, reader } = useDesk()
  const { bays } = useProject()
  const coming = all(record.slots)
    .filter(
      (slot) => slot.assembly === assembly.id && slot.state !== 'released' && slot.to > reader.now,
    )
    .toSorted((a, b) => a.from.localeCompare(b.from))
  const moving = all(record.handovers).filter(
    (handover) => handover.state === 'released' && handover.assemblies.includes(assembly.id),
  )
  return (
    <section className="sheet stack">
      <Head title={`Itinerary: ${assembly.name}`} />
      <ol className="string">
        <li className="past">
          <h3>{atStart(partyName(assembly.custodian, record))}</h3>
          <p className="small">{since(assembly.since, reader)}</p>
        </li>
        {moving.map((handover) => (
          <li key={handover.id}>
            <h3>
              <Link href={`/p/${record.id}/handovers/${handover.id}`}>
                Released to {partyName(handover.to, record)}
              </Link>
            </h3>
            <p className="small">not received yet</p>
          </li>
        ))}
        {coming.map((slot) => (
          <li key={slot.id} className={slot.state === 'asked' ? 'loose' : ''}>
            <h3>
              {atStart(partyName(slot.party, record, reader))} ·{' '}
              {bays.find(({ id }) => id === slot.bay)?.name ?? 'a bay'}
            </h3>
            <p className="small">
              {exactSpan(slot.from, slot.to, reader)}
              {slot.state === 'asked' && ' · asked, not agreed yet'}
            </p>
          </li>
        ))}
      </ol>
    </section>
  )
}
