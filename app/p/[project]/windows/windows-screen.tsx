'use client'
import { useState } from 'react'
import { SelectField } from '@/app/_ui/form/text-field.tsx'
import { EmptyState } from '@/app/_ui/paper.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import type { Assembly } from '@/lib/record/entities/things.ts'
import type { ProjectRecord } from '@/lib/record/project-record.ts'
import { all } from '@/lib/record/table.ts'
import { ClaimForm } from './claim-form.tsx'
import { Floor } from './floor.tsx'
import { Itinerary } from './itinerary.tsx'
import { OpenWindows } from './open-windows.tsx'
import { SlotList } from './slot-list.tsx'

interface Asked {
  readonly window: string | undefined
  readonly stage: string | undefined
  readonly assembly: string | undefined
}

/** What moves by itself: neither fitted to anything. Those with windows or slots first. */
function movables(record: ProjectRecord): readonly Assembly[] {
  const wanted = new Set<string>([
    ...all(record.openWindows).map(({ assembly }) => assembly),
    ...all(record.slots).map(({ assembly }) => assembly),
  ])
  return all(record.assemblies)
    .filter((assembly) => assembly.host === null)
    .toSorted((a, b) => Number(wanted.has(b.id)) - Number(wanted.has(a.id)))
}

/** Where one assembly will be: its windows and slots, a claim for one's own shop, the lead's answer to claims. */
export function WindowsScreen({ window, stage, assembly }: Asked) {
  const { record, standing } = useDesk()
  const choices = movables(record)
  const work = record.stages.rows.get(stage ?? '')
  const [picked, setPicked] = useState<string>()
  const wanted =
    picked ??
    assembly ??
    record.openWindows.rows.get(window ?? '')?.assembly ??
    work?.host ??
    work?.assemblies[0] ??
    choices[0]?.id
  const chosen = wanted === undefined ? undefined : record.assemblies.rows.get(wanted)
  if (chosen === undefined) {
    return (
      <EmptyState title="Nothing to make room for yet">
        Add the shell and the other assemblies in the project’s set-up; then bays can be claimed for
        them.
      </EmptyState>
    )
  }
  const claims =
    record.parties.rows.get(standing.party)?.role === 'shop' && standing.actsFor(standing.party)
  return (
    <div className="stack">
      {choices.length > 1 && (
        <SelectField
          label="Which assembly"
          value={chosen.id}
          onChange={setPicked}
          options={choices.map(({ id, name }) => ({ value: id, label: name }))}
        />
      )}
      <Floor assembly={chosen} />
      <div className="cols cols-main">
        <div className="stack">
          {claims && <ClaimForm key={chosen.id} assembly={chosen} window={window} stage={stage} />}
          <SlotList assembly={chosen} />
        </div>
        <div className="stack">
          <Itinerary assembly={chosen} />
          <OpenWindows assembly={chosen} />
        </div>
      </div>
    </div>
  )
}
