'use client'
import Link from 'next/link'
import { projectPath } from '@/app/_ui/paths.ts'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { HandoverNext } from '@/app/p/[project]/handovers/[handover]/handover-next.tsx'
import { handoverNumber } from '@/app/p/[project]/handovers/handover-facts.ts'
import { openHandoversOf } from '@/lib/gate/indexes.ts'
import type { Assembly } from '@/lib/record/entities/things.ts'
import { assemblyName, atStart, partyName } from '@/lib/words/names.ts'

/** What can be pressed on an assembly now: its handover is prepared, released or received here; or whose press it is. */
export function AssemblyPresses({ assembly }: { readonly assembly: Assembly }) {
  const { record, reader, standing } = useDesk()
  const open = openHandoversOf(record.handovers, assembly.id)
  if (open.length > 0) {
    return open.map((handover) => (
      <div key={handover.id} className="stack tight">
        <p>
          <Link
            className="row-link"
            prefetch={false}
            href={projectPath(record.id, `handovers/${handover.id}`)}
          >
            Handover {handoverNumber(handover, record)}:{' '}
            {handover.state === 'released' ? 'released' : 'to be released'} to{' '}
            {partyName(handover.to, record, reader)}
          </Link>
        </p>
        <HandoverNext handover={handover} />
      </div>
    ))
  }
  if (assembly.host !== null) {
    return (
      <section className="sheet">
        <p>It goes wherever the {assemblyName(assembly.host, record)} goes, while it is fitted.</p>
      </section>
    )
  }
  if (!standing.actsFor(assembly.custodian) && !standing.managesLead) {
    return (
      <section className="sheet">
        <p>{atStart(partyName(assembly.custodian, record))} hands it over; nobody else can.</p>
      </section>
    )
  }
  return (
    <Link
      className="btn btn-wide"
      prefetch={false}
      href={projectPath(record.id, `handovers/new?assembly=${assembly.id}`)}
    >
      Prepare its handover
    </Link>
  )
}
