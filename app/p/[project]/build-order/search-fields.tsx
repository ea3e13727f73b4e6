'use client'
import { useEffect, useRef } from 'react'
import { SelectField, TextField } from '@/app/_ui/form/text-field.tsx'
import { partiesHere } from '@/app/_ui/use-desk.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import { all } from '@/lib/record/table.ts'
import { type ShownState, stateLabel } from '@/lib/words/labels.ts'
import type { Search } from './group-stages.ts'

const states: readonly ShownState[] = [
  'ready',
  'in work',
  'paused',
  'ended',
  'held',
  'waiting',
  'signed off',
  'in doubt',
  'reopened',
]
const groupings = [
  { value: 'week', label: 'by week' },
  { value: 'assembly', label: 'by assembly' },
  { value: 'shop', label: 'by shop' },
  { value: 'number', label: 'by number' },
] as const

/** What is looked for in the build order, and how it is grouped. A slash goes to the words. */
export function SearchFields({
  search,
  onChange,
}: {
  readonly search: Search
  readonly onChange: (search: Search) => void
}) {
  const { record } = useProject()
  const find = useRef<HTMLDivElement>(null)
  useSlashKey(find)
  const named = (rows: readonly { readonly id: string; readonly name: string }[]) =>
    rows.map(({ id, name }) => ({ value: id, label: name }))
  const works = new Set(all(record.stages).map(({ party }) => party))
  return (
    <div className="filters filters-5">
      <div ref={find}>
        <TextField
          label="Find"
          type="search"
          value={search.words}
          onChange={(words) => onChange({ ...search, words })}
          placeholder="number, name, shop"
        />
      </div>
      <SelectField
        label="Shop"
        value={search.shop}
        none="every one"
        options={named(partiesHere(record).filter(({ id }) => works.has(id)))}
        onChange={(shop) => onChange({ ...search, shop })}
      />
      <SelectField
        label="State"
        value={search.state}
        none="every one"
        options={states.map((state) => ({ value: state, label: stateLabel(state) }))}
        onChange={(state) =>
          onChange({ ...search, state: states.find((known) => known === state) ?? '' })
        }
      />
      <SelectField
        label="Assembly"
        value={search.assembly}
        none="every one"
        options={named(all(record.assemblies))}
        onChange={(assembly) => onChange({ ...search, assembly })}
      />
      <SelectField
        label="Grouped"
        value={search.by}
        options={groupings}
        onChange={(by) =>
          onChange({
            ...search,
            by: groupings.find((known) => known.value === by)?.value ?? 'week',
          })
        }
      />
    </div>
  )
}

/** A slash, pressed anywhere but in a field, goes to the search. */
function useSlashKey(find: { readonly current: HTMLDivElement | null }): void {
  useEffect(() => {
    const onKey = (event: globalThis.KeyboardEvent) => {
      const inField =
        event.target instanceof HTMLElement && event.target.matches('input, textarea, select')
      if (event.key !== '/' || inField || event.ctrlKey || event.metaKey) return
      event.preventDefault()
      find.current?.querySelector('input')?.focus()
    }
    addEventListener('keydown', onKey)
    return () => removeEventListener('keydown', onKey)
  }, [find])
}
