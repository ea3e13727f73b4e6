'use client'
import Link from 'next/link'
import { Mark } from '@/app/_ui/mark.tsx'
import { Head } from '@/app/_ui/paper.tsx'
import { projectPath } from '@/app/_ui/paths.ts'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { stackOf } from '@/lib/coating/stack.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import { label } from '@/lib/words/labels.ts'
import { assemblyName, atStart } from '@/lib/words/names.ts'

/** What a stage lays ends with its coat: where it is recorded, and where it still is to be. */
export function ItsCoat({ stage }: { readonly stage: Stage }) {
  const { record, standing } = useDesk()
  const { lays } = stage
  if (lays === null || stage.assemblies.length === 0) return null
  const begun = stage.state !== 'planned' && stage.state !== 'reopened'
  const own = standing.actsFor(stage.party)
  return (
    <section className="sheet stack" id="coat">
      <Head title={`It lays ${lays}`} />
      {begun && (
        <p className="small">
          Windows and cure count from the end of the last coat. Without it they count from the end
          of the work.
        </p>
      )}
      <ul className="ruled">
        {stage.assemblies.map((assembly) => {
          const laid = stackOf(record, assembly).some((coat) => coat.stage === stage.id)
          const name = assemblyName(assembly, record)
          const path = projectPath(record.id, `coating/${assembly}`)
          return (
            <li key={assembly} className="rowmark">
              <Mark name={laid ? 'met' : 'waiting'} />
              <div>
                {begun && !laid && own ? (
                  <Link className="row-link" prefetch={false} href={`${path}?stage=${stage.id}`}>
                    {label('coat.record', { name })}
                  </Link>
                ) : (
                  <Link className="row-link" prefetch={false} href={path}>
                    What lies on {name}
                  </Link>
                )}
                {begun && (
                  <p className="small">
                    {laid
                      ? 'Its coat is recorded.'
                      : `${atStart(lays)} of this stage is not recorded yet.`}
                  </p>
                )}
              </div>
            </li>
          )
        })}
      </ul>
    </section>
  )
}
