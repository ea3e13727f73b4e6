'use client'
import Link from 'next/link'
import { useState } from 'react'
import { TickField } from '@/app/_ui/form/text-field.tsx'
import { EmptyState, Head } from '@/app/_ui/paper.tsx'
import { projectPath } from '@/app/_ui/paths.ts'
import { PrintButton } from '@/app/_ui/print-button.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { all } from '@/lib/record/table.ts'
import { counted } from '@/lib/words/money.ts'
import { partyName } from '@/lib/words/names.ts'
import { TagLabel } from './tag-label.tsx'

/** The tags of all assemblies of a car, to be printed, cut and tied on. */
export function TagsScreen() {
  const { record, reader, standing } = useDesk()
  const assemblies = all(record.assemblies).toSorted((a, b) => a.name.localeCompare(b.name))
  const ours = assemblies.filter(({ custodian }) => custodian === standing.party)
  const [onlyOurs, setOnlyOurs] = useState(false)
  const shown = onlyOurs ? ours : assemblies
  if (assemblies.length === 0) {
    return (
      <EmptyState title="No assemblies yet">
        What is worked on, moved or fitted is entered in the set-up; each gets a tag.
      </EmptyState>
    )
  }
  return (
    <div className="stack prints-label">
      <p className="way no-print">
        <Link href={projectPath(record.id)}>Who has what</Link>
      </p>
      <section className="sheet stack no-print">
        <Head title="Tags" note={counted(shown.length, 'tag', 'tags', reader.locale)} />
        <p>
          Print, cut, punch and tie them on. Any phone’s camera opens the assembly; the code under
          its name can be typed.
        </p>
        {ours.length > 0 && ours.length < assemblies.length && (
          <TickField
            label={`Only what ${partyName(standing.party, record)} has`}
            checked={onlyOurs}
            onChange={setOnlyOurs}
          />
        )}
        <PrintButton label={`Print ${counted(shown.length, 'tag', 'tags', reader.locale)}`} />
      </section>
      <div className="labels">
        {shown.map((assembly) => (
          <TagLabel key={assembly.id} assembly={assembly} />
        ))}
      </div>
    </div>
  )
}
