'use client'
import Link from 'next/link'
import { useEffect, useRef, useState } from 'react'
import { EmptyState, Head } from '@/app/_ui/paper.tsx'
import { pathOf, projectPath } from '@/app/_ui/paths.ts'
import { RowList } from '@/app/_ui/row-list.tsx'
import type { JournalPage } from '@/lib/command/wire.ts'
import { getJournal } from '@/lib/live/http.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import { projectCommandNames } from '@/lib/record/command-names.ts'
import { civilDateIn } from '@/lib/record/zoned-time.ts'
import { commandTitle } from '@/lib/words/command-title.ts'
import { day, moment, sameDay, timeOfDay } from '@/lib/words/dates.ts'
import { journalLine } from '@/lib/words/journal-line.ts'
import { partyName, stageName } from '@/lib/words/names.ts'
import type { Reader } from '@/lib/words/reader.ts'

interface Filter {
  readonly person: string
  readonly command: string
  readonly entity: string
  readonly older: boolean
}

/** Who did what, newest first, each entry linked by its hash to the one before. */
export function JournalScreen({
  first,
  filter,
}: {
  readonly first: JournalPage
  readonly filter: Filter
}) {
  const { record, reader } = useProject()
  const page = useNewest(first, filter)
  const named: Reader = { ...reader, people: { ...reader.people, ...page.people } }
  return (
    <div className="stack">
      <Head title="Journal" note={filter.older ? 'older entries' : 'newest first'} />
      <Filters filter={filter} people={named.people} />
      {page.entries.length === 0 ? (
        <EmptyState title="No entry fits that">
          <Link href={projectPath(record.id, 'journal')}>Show every entry</Link>
        </EmptyState>
      ) : (
        <RowList className="sheet ruled" ordered>
          {page.entries.map((entry) => (
            <Entry key={entry.sequence} entry={entry} reader={named} />
          ))}
        </RowList>
      )}
      {page.next !== null && (
        <Link
          className="btn btn-line btn-wide"
          href={projectPath(record.id, `journal?${queryOf(filter, page.next)}`)}
        >
          Older entries
        </Link>
      )}
    </div>
  )
}

function Entry({
  entry,
  reader,
}: {
  readonly entry: JournalPage['entries'][number]
  readonly reader: Reader
}) {
  const { record } = useProject()
  const about = entry.entities.map(({ id }) => pathOf(record, id)).find((path) => path !== null)
  const happened = late(entry.at, entry.happenedAt, reader)
  const line = journalLine(entry, entry.entities, record, reader)
  return (
    <li className="rowmark due">
      <p className="n small">
        <b>{day(entry.at, reader)}</b>
        <br />
        {timeOfDay(entry.at, reader)}
      </p>
      <div>
        <h3>
          {about === undefined || about === null ? (
            line
          ) : (
            <Link className="plain" prefetch={false} href={about}>
              {line}
            </Link>
          )}
        </h3>
        <p className="small">
          {entry.party === null ? '' : partyName(entry.party, record)}
          {happened}
          {entry.hiddenParts.length > 0 && ' · part of it is not for this view'}{' '}
          <span className="soft">
            · entry {entry.sequence}, <span title={entry.hash}>{entry.hash.slice(0, 12)}</span>
          </span>
        </p>
      </div>
    </li>
  )
}

/** Entered some time after it happened: then both times are said. */
const LATE_MS = 120_000
const late = (
  at: JournalPage['entries'][number]['at'],
  happenedAt: JournalPage['entries'][number]['happenedAt'],
  reader: Reader,
): string => {
  if (Date.parse(at) - Date.parse(happenedAt) < LATE_MS) return ''
  return sameDay(at, happenedAt, reader)
    ? ` · happened ${timeOfDay(happenedAt, reader)}`
    : ` · happened ${moment(happenedAt, reader)}`
}

function Filters({
  filter,
  people,
}: {
  readonly filter: Filter
  readonly people: Reader['people']
}) {
  const { record, reader } = useProject()
  const stages = [...record.stages.rows.values()].toSorted((a, b) => a.number - b.number)
  return (
    <details className="sheet" open={filter.person + filter.command + filter.entity !== ''}>
      <summary>Look for something, or for how it stood on a day</summary>
      <div className="cols cols-2">
        <form className="stack tight" method="get">
          <Choice name="person" label="Who" value={filter.person} every="Everybody">
            {Object.entries(people).map(([id, name]) => ({ value: id, label: name }))}
          </Choice>
          <Choice name="command" label="What was done" value={filter.command} every="Everything">
            {projectCommandNames.map((name) => ({ value: name, label: commandTitle(name) }))}
          </Choice>
          <Choice name="entity" label="To what" value={filter.entity} every="Anything">
            {[
              ...stages.map(({ id }) => ({ value: id, label: stageName(id, record) })),
              ...[...record.assemblies.rows.values()].map(({ id, name }) => ({
                value: id,
                label: name,
              })),
            ]}
          </Choice>
          <button type="submit" className="btn">
            Show these
          </button>
        </form>
        <form className="stack tight" method="get">
          <div className="field">
            <label htmlFor="journal-at">The record as it stood on</label>
            <input
              id="journal-at"
              name="at"
              type="date"
              max={civilDateIn(reader.now, reader.timeZone)}
              required
            />
          </div>
          <button type="submit" className="btn btn-line">
            Show that day
          </button>
        </form>
      </div>
    </details>
  )
}

function Choice({
  name,
  label,
  value,
  every,
  children,
}: {
  readonly name: string
  readonly label: string
  readonly value: string
  readonly every: string
  readonly children: readonly { readonly value: string; readonly label: string }[]
}) {
  return (
    <div className="field">
      <label htmlFor={`journal-${name}`}>{label}</label>
      <select id={`journal-${name}`} name={name} defaultValue={value}>
        <option value="">{every}</option>
        {children.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </div>
  )
}

const LIMIT = 50

function queryOf(filter: Filter, before: number | null): string {
  const query = new URLSearchParams({ limit: String(LIMIT) })
  if (before !== null) query.set('before', String(before))
  for (const name of ['person', 'command', 'entity'] as const) {
    if (filter[name] !== '') query.set(name, filter[name])
  }
  return query.toString()
}

/** The newest entries, fetched anew when the record moves on; an older page stands still. */
function useNewest(first: JournalPage, filter: Filter): JournalPage {
  const { record } = useProject()
  const [page, setPage] = useState(first)
  const shown = useRef(record.version)
  const query = queryOf(filter, null)
  useEffect(() => setPage(first), [first])
  useEffect(() => {
    if (filter.older || shown.current === record.version) return
    shown.current = record.version
    let stale = false
    void getJournal(record.id, query).then((got) => {
      if (got.ok && !stale) setPage(got.data)
    })
    return () => {
      stale = true
    }
  }, [record.id, record.version, filter.older, query])
  return page
}
