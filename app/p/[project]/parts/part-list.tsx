'use client'
import Link from 'next/link'
import { useState } from 'react'
import { TextField } from '@/app/_ui/form/text-field.tsx'
import { EmptyState, Head } from '@/app/_ui/paper.tsx'
import { RowList } from '@/app/_ui/row-list.tsx'
import { WordMark } from '@/app/_ui/state-mark.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import type { Part } from '@/lib/record/entities/things.ts'
import { all } from '@/lib/record/table.ts'
import { civil, day, since } from '@/lib/words/dates.ts'
import { partyName } from '@/lib/words/names.ts'
import { isLate, partState, promisesOf, slips } from './part-facts.ts'

/** Parts by what has to happen next: late first, then to be inspected, to be ordered, on their way, here. */
export function PartList() {
  const { record, reader, standing } = useDesk()
  const [sought, setSought] = useState('')
  const today = civil(reader.now, reader)
  const needle = sought.trim().toLowerCase()
  const parts = all(record.parts).filter((part) =>
    `${part.name} ${part.number ?? ''} ${partyName(part.supplier, record)}`
      .toLowerCase()
      .includes(needle),
  )
  const here = parts.filter(({ withdrawnAt }) => withdrawnAt === null)
  const late = here.filter((part) => isLate(part, promisesOf(record, part.id), today))
  const groups = [
    { title: 'Late', parts: late },
    { title: 'Here, to be inspected', parts: here.filter(({ state }) => state === 'arrived') },
    {
      title: 'To be ordered',
      parts: here.filter(({ state }) => state === 'wanted' || state === 'rejected'),
    },
    {
      title: 'On order',
      parts: here.filter((part) => part.state === 'ordered' && !late.includes(part)),
    },
    { title: 'Passed', parts: here.filter(({ state }) => state === 'inspected') },
    { title: 'Withdrawn', parts: parts.filter(({ withdrawnAt }) => withdrawnAt !== null) },
  ].filter((group) => group.parts.length > 0)
  return (
    <div className="stack">
      <div className="row spread">
        {standing.actsFor(standing.party) ? (
          <Link className="btn" href={`/p/${record.id}/parts/new`}>
            Put a part on the list
          </Link>
        ) : (
          <span />
        )}
        <TextField label="Find a part" type="search" value={sought} onChange={setSought} />
      </div>
      {groups.length === 0 && (
        <EmptyState title={sought === '' ? 'No part on the list yet' : 'No part of that name'}>
          What is bought or made to order stands here, with every promise that was made for it.
        </EmptyState>
      )}
      {groups.map((group) => (
        <section key={group.title} className="sheet stack">
          <Head title={group.title} note={String(group.parts.length)} />
          <RowList className="ruled">
            {group.parts.map((part) => (
              <PartRow key={part.id} part={part} today={today} />
            ))}
          </RowList>
        </section>
      ))}
    </div>
  )
}

function PartRow({ part, today }: { readonly part: Part; readonly today: string }) {
  const { record, reader } = useDesk()
  const promises = promisesOf(record, part.id)
  const last = promises.at(-1)
  const { mark, word } = partState(part, isLate(part, promises, today))
  const slipped = slips(promises)
  return (
    <li className="rowend row-chip">
      <div>
        <h3>
          <Link href={`/p/${record.id}/parts/${part.id}`}>{part.name}</Link>
        </h3>
        <p className="small">
          for {partyName(part.party, record, reader)}
          {part.supplier !== null && `, from ${partyName(part.supplier, record, reader)}`}
          {part.state === 'ordered' &&
            last !== undefined &&
            ` · promised ${day(last.date, reader)}`}
          {part.state === 'wanted' && ` · wanted ${since(part.wantedAt, reader)}`}
          {slipped > 0 && ` · put off ${slipped === 1 ? 'once' : `${slipped} times`}`}
        </p>
      </div>
      <WordMark mark={mark} word={word} />
    </li>
  )
}
