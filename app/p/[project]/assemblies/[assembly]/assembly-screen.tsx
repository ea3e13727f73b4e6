'use client'
import Link from 'next/link'
import { NotHere } from '@/app/_ui/not-here.tsx'
import { Head } from '@/app/_ui/paper.tsx'
import { projectPath } from '@/app/_ui/paths.ts'
import { PrintButton } from '@/app/_ui/print-button.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { Notes } from '@/app/p/[project]/stages/[stage]/notes.tsx'
import { TagLabel } from '@/app/p/[project]/tags/tag-label.tsx'
import { Itinerary } from '@/app/p/[project]/windows/itinerary.tsx'
import { slotsOf } from '@/lib/gate/indexes.ts'
import { SoFar } from '../../handovers/[handover]/so-far.tsx'
import { AssemblyPhotos } from './assembly-photos.tsx'
import { AssemblyPresses } from './assembly-presses.tsx'
import { AssemblyTag } from './assembly-tag.tsx'
import { StagesOnIt } from './stages-on-it.tsx'

/** One assembly: what a tag leads to. What it is and who answers for it, what can be pressed, what is done on it, where it was. */
export function AssemblyScreen({ id }: { readonly id: string }) {
  const { record, reader } = useDesk()
  const assembly = record.assemblies.rows.get(id)
  if (assembly === undefined) return <NotHere what="assembly" href={projectPath(record.id)} />
  const comes = slotsOf(record.slots, assembly.id).some(({ to }) => to > reader.now)
  return (
    <div className="stack prints-label">
      <p className="way no-print">
        <Link href={projectPath(record.id)}>Who has what</Link>
      </p>
      <div className="cols cols-main">
        <div className="stack no-print">
          <AssemblyTag assembly={assembly} />
          <AssemblyPresses assembly={assembly} />
          <StagesOnIt assembly={assembly} />
          <p>
            <Link
              className="row-link"
              prefetch={false}
              href={projectPath(record.id, `coating/${assembly.id}`)}
            >
              What lies on it: coats and film
            </Link>
          </p>
          <AssemblyPhotos assembly={assembly} />
        </div>
        <div className="stack">
          <div className="stack no-print">
            <SoFar assemblies={[assembly.id]} />
            {comes && <Itinerary assembly={assembly} />}
            <Notes on={assembly.id} />
          </div>
          <section className="sheet stack">
            <div className="no-print">
              <Head title="Its tag" />
            </div>
            <TagLabel assembly={assembly} />
            <PrintButton label="Print the tag" />
            <p className="no-print">
              <Link className="row-link" prefetch={false} href={projectPath(record.id, 'tags')}>
                All tags of this car
              </Link>
            </p>
          </section>
        </div>
      </div>
    </div>
  )
}
