'use client'
import Link from 'next/link'
import { type KeyboardEvent, useRef, useState } from 'react'
import { Mark } from '@/app/_ui/mark.tsx'
import { projectPath } from '@/app/_ui/paths.ts'
import { StateMark } from '@/app/_ui/state-mark.tsx'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { LaidOut } from '@/lib/plan/laid-out.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import { day } from '@/lib/words/dates.ts'
import { type ShownState, stageNumber } from '@/lib/words/labels.ts'
import { floatShort, laidDays } from '@/lib/words/laid.ts'
import { partyName } from '@/lib/words/names.ts'
import type { StageGroup } from './group-stages.ts'
import { type Column, type Order, sortStages } from './sort-stages.ts'

const columns: readonly { readonly id: Column; readonly label: string }[] = [
  { id: 'number', label: 'No.' },
  { id: 'name', label: 'Stage' },
  { id: 'shop', label: 'Shop' },
  { id: 'state', label: 'State' },
  { id: 'from', label: 'Begins' },
  { id: 'to', label: 'Ends' },
  { id: 'float', label: 'May slip' },
]

interface Shown {
  readonly laidOut: LaidOut
  readonly stateOf: (stage: Stage) => ShownState
}

/**
 * The stages in groups: a dense table at a desk, cards on a phone, the same words in both. The arrow keys go from row to row, Home
 * and End to the ends.
 */
export function StageTable({
  groups,
  folds,
  ...shown
}: Shown & { readonly groups: readonly StageGroup[]; readonly folds: boolean }) {
  const { record } = useProject()
  const [order, setOrder] = useState<Order | null>(null)
  const table = useRef<HTMLTableElement>(null)
  const reads = { ...shown, shopOf: (stage: Stage) => partyName(stage.party, record) }
  return (
    <table
      ref={table}
      className="stage-table"
      onKeyDown={(event) => walk(event, table.current)}
      aria-label="The stages"
    >
      <thead>
        <tr>
          {columns.map(({ id, label }) => (
            <th key={id} scope="col" aria-sort={sortOf(order, id)}>
              <button type="button" onClick={() => setOrder(nextOrder(order, id))}>
                {label}
                <span aria-hidden="true">{arrowOf(order, id)}</span>
              </button>
            </th>
          ))}
        </tr>
      </thead>
      {groups.map((group) => (
        <Group
          key={group.id}
          group={{ ...group, stages: sortStages(group.stages, order, reads) }}
          folds={folds}
          {...shown}
        />
      ))}
    </table>
  )
}

const sortOf = (order: Order | null, id: Column) =>
  order?.column !== id ? 'none' : order.down ? 'descending' : 'ascending'
const arrowOf = (order: Order | null, id: Column): string =>
  order?.column !== id ? '' : order.down ? ' ↓' : ' ↑'

/** A column up, then down, then as it was. */
function nextOrder(order: Order | null, id: Column): Order | null {
  if (order?.column !== id) return { column: id, down: false }
  return order.down ? null : { column: id, down: true }
}

/** One group; what is signed off in it is folded away, unless something is looked for. */
function Group({
  group,
  folds,
  ...shown
}: Shown & { readonly group: StageGroup; readonly folds: boolean }) {
  const [isOpen, setOpen] = useState(false)
  const over = folds ? group.stages.filter((stage) => shown.stateOf(stage) === 'signed off') : []
  const open = group.stages.filter((stage) => !over.includes(stage))
  const rows = isOpen ? group.stages : open
  return (
    <tbody>
      <tr className="stage-group">
        <th scope="rowgroup" colSpan={columns.length}>
          <span>
            {group.title} <span className="soft">· {group.stages.length}</span>
          </span>
          {over.length > 0 && (
            <button
              type="button"
              className="btn btn-line btn-small"
              aria-expanded={isOpen}
              onClick={() => setOpen(!isOpen)}
            >
              {isOpen ? 'Hide' : 'Show'} {over.length} signed off
            </button>
          )}
        </th>
      </tr>
      {rows.map((stage) => (
        <Row key={stage.id} stage={stage} {...shown} />
      ))}
    </tbody>
  )
}

function Row({ stage, laidOut, stateOf }: Shown & { readonly stage: Stage }) {
  const { record, reader } = useProject()
  const laid = laidOut.stages.get(stage.id)
  const onRun = laid?.onRun === true
  return (
    <tr className={onRun ? 'stage-row stage-run' : 'stage-row'}>
      <td className="stage-number">
        <b className="num">{stageNumber(stage.number)}</b>
      </td>
      <th scope="row" className="stage-name">
        <Link
          prefetch={false}
          className="stage-link"
          href={projectPath(record.id, `stages/${stage.id}`)}
        >
          <span className="vh">{stageNumber(stage.number)} </span>
          {stage.name}
        </Link>
      </th>
      <td className="stage-shop">{partyName(stage.party, record)}</td>
      <td className="stage-state">
        <StateMark state={stateOf(stage)} />
      </td>
      <td className="stage-days">
        {laid === undefined ? '' : <span className="phone">{laidDays(laid, reader)}</span>}
        {laid === undefined ? '' : <span className="desk">{day(laid.from, reader)}</span>}
      </td>
      <td className="stage-to">{laid === undefined ? '' : day(laid.to, reader)}</td>
      <td className="stage-float">
        {onRun && <Mark name="run" />} {laid === undefined ? '' : floatShort(laid)}
      </td>
    </tr>
  )
}

/** The arrow keys go from row to row, Home and End to the ends. */
function walk(event: KeyboardEvent, table: HTMLTableElement | null): void {
  const links = [...(table?.querySelectorAll<HTMLAnchorElement>('a.stage-link') ?? [])]
  const at = links.findIndex((link) => link.matches(':focus'))
  const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: links.length - 1 }[event.key]
  const link = to === undefined ? undefined : links[to]
  if (link === undefined) return
  event.preventDefault()
  link.focus()
}
