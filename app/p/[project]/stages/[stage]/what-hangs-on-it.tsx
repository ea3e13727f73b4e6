'use client'
import { Sheet } from '@/app/_ui/paper.tsx'
import { StageLine } from '@/app/_ui/stage-line.tsx'
import { linksFrom, linksTo } from '@/lib/gate/indexes.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { Link, Stage } from '@/lib/record/entities/work.ts'
import { counted, hours } from '@/lib/words/money.ts'

/** The stages that wait for this one, and those it waits for, with their lags. */
export function WhatHangsOnIt({ stage }: { readonly stage: Stage }) {
  const { record } = useProject()
  return (
    <>
      <Linked title="What hangs on it" links={linksFrom(record.links, stage.id)} end="to" />
      <Linked title="What it hangs on" links={linksTo(record.links, stage.id)} end="from" />
    </>
  )
}

function Linked({
  title,
  links,
  end,
}: {
  readonly title: string
  readonly links: readonly Link[]
  readonly end: 'from' | 'to'
}) {
  const { record, reader } = useProject()
  const there = links.flatMap((link) => {
    const stage = record.stages.rows.get(link[end])
    return stage === undefined || stage.removedAt !== null ? [] : [{ link, stage }]
  })
  if (there.length === 0) return null
  const inOrder = there.toSorted((a, b) => a.stage.number - b.stage.number)
  const done = inOrder.filter(({ stage }) => stage.state === 'signed off')
  const folded = done.length > 1 ? done : []
  const open = inOrder.filter((one) => !folded.includes(one))
  const lines = (some: typeof there) => (
    <ul className="stack tight">
      {some.map(({ link, stage }) => (
        <li key={link.id}>
          <StageLine stage={stage} note={lagWords(link, reader.locale)} />
        </li>
      ))}
    </ul>
  )
  return (
    <Sheet title={title} note={there.length}>
      {open.length > 0 && lines(open)}
      {folded.length > 0 && (
        <details>
          <summary>{folded.length} signed off</summary>
          {lines(folded)}
        </details>
      )}
    </Sheet>
  )
}

/** From three days on nobody counts in hours. */
const lag = (value: number, locale: string): string =>
  value >= 72 && value % 24 === 0
    ? counted(value / 24, 'day', 'days', locale)
    : hours(value, locale)

const lagWords = (link: Link, locale: string): string =>
  [
    link.leastLagHours > 0 ? `after ${lag(link.leastLagHours, locale)} of cure` : '',
    link.greatestLagHours === null
      ? ''
      : `within ${lag(link.greatestLagHours, locale)} of the end of work`,
  ]
    .filter((part) => part !== '')
    .join(', ')
