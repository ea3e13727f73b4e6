'use client'
import Link from 'next/link'
import { type KeyboardEvent, useDeferredValue, useEffect, useMemo, useRef, useState } from 'react'
import { SelectField, TextField } from '@/app/_ui/form/text-field.tsx'
import { EmptyState, Head } from '@/app/_ui/paper.tsx'
import { projectPath } from '@/app/_ui/paths.ts'
import { StageLine } from '@/app/_ui/stage-line.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { stageStatus } from '@/lib/gate/status.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import { type ShownState, stateLabel } from '@/lib/words/labels.ts'
import { groupStages, type Search, type StageGroup } from './group-stages.ts'

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
  { value: 'assembly', label: 'by assembly' },
  { value: 'shop', label: 'by shop' },
  { value: 'number', label: 'by number' },
] as const

/** The build order as a list: found by words and state, in groups, walked through with the arrow keys. */
export function BuildOrderScreen({ assembly }: { readonly assembly: string | null }) {
  const { record, reader, standing } = useDesk()
  const [search, setSearch] = useState<Search>({
    words: '',
    state: '',
    assembly: assembly ?? '',
    by: 'assembly',
  })
  const [most, setMost] = useState(PAGE)
  const looked = useDeferredValue(search)
  const groups = useMemo(
    () => groupStages(record, looked, (stage) => stageStatus(record, stage, reader.now)),
    [record, looked, reader.now],
  )
  const count = groups.reduce((sum, group) => sum + group.stages.length, 0)
  const all = [...record.stages.rows.values()].filter((stage) => stage.removedAt === null).length
  const list = useRef<HTMLDivElement>(null)
  const find = useRef<HTMLDivElement>(null)
  useSlashKey(find)
  const assemblies = [...record.assemblies.rows.values()].map(({ id, name }) => ({
    value: id,
    label: name,
  }))
  return (
    <div className="stack">
      <Head title="Build order" note={count === all ? `${all} stages` : `${count} of ${all}`} />
      <div className="filters">
        <div ref={find}>
          <TextField
            label="Find"
            type="search"
            value={search.words}
            onChange={(words) => setSearch({ ...search, words })}
            placeholder="number, name, shop · press /"
          />
        </div>
        <SelectField
          label="State"
          value={search.state}
          none="Every state"
          options={states.map((state) => ({ value: state, label: stateLabel(state) }))}
          onChange={(state) =>
            setSearch({ ...search, state: states.find((known) => known === state) ?? '' })
          }
        />
        <SelectField
          label="Assembly"
          value={search.assembly}
          none="Every assembly"
          options={assemblies}
          onChange={(chosen) => setSearch({ ...search, assembly: chosen })}
        />
        <SelectField
          label="Grouped"
          value={search.by}
          options={groupings}
          onChange={(by) =>
            setSearch({
              ...search,
              by: groupings.find((known) => known.value === by)?.value ?? 'assembly',
            })
          }
        />
      </div>
      {count === 0 && (
        <EmptyState title={all === 0 ? 'No stage yet' : 'No stage fits that'}>
          {all === 0 ? (
            <p>
              {standing.managesLead ? (
                <Link href={projectPath(record.id, 'set-up')}>Add stages or import a list</Link>
              ) : (
                'The lead sets the build order up.'
              )}
            </p>
          ) : (
            <button
              type="button"
              className="btn btn-line"
              onClick={() => setSearch({ ...search, words: '', state: '', assembly: '' })}
            >
              Show all stages
            </button>
          )}
        </EmptyState>
      )}
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the arrow keys move between the links in it, which have their own roles */}
      <div ref={list} className="stack" onKeyDown={(event) => walk(event, list.current)}>
        {firstOf(groups, most).map((group) => (
          <GroupOfStages key={group.id} group={group} folds={isPlain(search)} />
        ))}
      </div>
      {count > most && (
        <button
          type="button"
          className="btn btn-line btn-wide"
          onClick={() => setMost(most + PAGE)}
        >
          Show {Math.min(PAGE, count - most)} more of {count}
        </button>
      )}
    </div>
  )
}

/** As many stages as are drawn at once. */
const PAGE = 150

/** Nothing is looked for: what is over may be folded away. */
const isPlain = ({ words, state, assembly }: Search): boolean =>
  words.trim() === '' && state === '' && assembly === ''

/** The groups up to so many stages in all. */
function firstOf(groups: readonly StageGroup[], most: number): readonly StageGroup[] {
  let left = most
  return groups.flatMap((group) => {
    const stages = group.stages.slice(0, Math.max(0, left))
    left -= stages.length
    return stages.length === 0 ? [] : [{ ...group, stages }]
  })
}

/** One group; what is signed off in it lies in a fold, unless something is looked for. */
function GroupOfStages({ group, folds }: { readonly group: StageGroup; readonly folds: boolean }) {
  const over = folds ? group.stages.filter(({ state }) => state === 'signed off') : []
  const open = group.stages.filter((stage) => !over.includes(stage))
  if (open.length === 0) {
    return (
      <details>
        <summary>
          {group.title} · {over.length} signed off
        </summary>
        <Stages stages={over} />
      </details>
    )
  }
  return (
    <section className="stack tight">
      <h3>
        {group.title} <span className="soft">· {group.stages.length}</span>
      </h3>
      <Stages stages={open} />
      {over.length > 0 && (
        <details>
          <summary>{over.length} signed off</summary>
          <Stages stages={over} />
        </details>
      )}
    </section>
  )
}

const Stages = ({ stages }: { readonly stages: readonly Stage[] }) => (
  <ol className="cols lines">
    {stages.map((stage) => (
      <li key={stage.id}>
        <StageLine stage={stage} />
      </li>
    ))}
  </ol>
)

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

/** The arrow keys go from line to line, Home and End to the ends. */
function walk(event: KeyboardEvent, list: HTMLDivElement | null): void {
  const links = [...(list?.querySelectorAll<HTMLAnchorElement>('a.line') ?? [])].filter((link) =>
    link.checkVisibility(),
  )
  const at = links.findIndex((link) => link.matches(':focus'))
  const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: links.length - 1 }[event.key]
  const link = to === undefined ? undefined : links[to]
  if (link === undefined) return
  event.preventDefault()
  link.focus()
}
