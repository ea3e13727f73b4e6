'use client'
import Link from 'next/link'
import type { MarkName } from '@/app/_ui/mark.tsx'
import { EmptyState, Head } from '@/app/_ui/paper.tsx'
import { RowList } from '@/app/_ui/row-list.tsx'
import { WordMark } from '@/app/_ui/state-mark.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import type { Handover } from '@/lib/record/entities/things.ts'
import { day, since } from '@/lib/words/dates.ts'
import { atStart, partyName } from '@/lib/words/names.ts'
import { handoverNumber, inOrder, isOpen, whatMoves } from './handover-facts.ts'

/** Handovers: first those whose next press is this reader's, then what is under way, then the past. */
export function HandoverList() {
  const { record, standing } = useDesk()
  const newest = inOrder(record).toReversed()
  const mine = (handover: Handover) =>
    (handover.state === 'prepared' && standing.actsFor(handover.from)) ||
    (handover.state === 'released' && standing.actsFor(handover.to))
  const groups = [
    { title: 'Yours to press', handovers: newest.filter(mine) },
    {
      title: 'Under way',
      handovers: newest.filter((handover) => isOpen(handover) && !mine(handover)),
    },
    { title: 'Done', handovers: newest.filter((handover) => !isOpen(handover)) },
  ].filter((group) => group.handovers.length > 0)
  return (
    <div className="stack">
      {standing.actsFor(standing.party) && (
        <p>
          <Link className="btn" href={`/p/${record.id}/handovers/new`}>
            Prepare a handover
          </Link>
        </p>
      )}
      {groups.length === 0 && (
        <EmptyState title="Nothing has changed hands yet">
          When an assembly goes to another shop, it is released here and received there, each in
          writing.
        </EmptyState>
      )}
      {groups.map((group) => (
        <section key={group.title} className="sheet stack">
          <Head title={group.title} note={String(group.handovers.length)} />
          <RowList className="ruled">
            {group.handovers.map((handover) => (
              <HandoverRow key={handover.id} handover={handover} />
            ))}
          </RowList>
        </section>
      ))}
    </div>
  )
}

function stateOf({ state, outcome }: Handover): { mark: MarkName; word: string } {
  switch (state) {
    case 'prepared':
      return { mark: 'waiting', word: 'To be released' }
    case 'released':
      return { mark: 'waiting', word: 'To be received' }
    case 'received':
      return {
        mark: 'signed',
        word: outcome === 'accepted with remarks' ? 'Received, remarks' : 'Received',
      }
    case 'refused':
      return { mark: 'refused', word: 'Refused' }
    default:
      return { mark: 'reopened', word: 'Taken back' }
  }
}

function HandoverRow({ handover }: { readonly handover: Handover }) {
  const { record, reader } = useDesk()
  const { mark, word } = stateOf(handover)
  const at = handover.receivedAt ?? handover.releasedAt ?? handover.preparedAt
  return (
    <li className="rowend row-chip">
      <div>
        <h3>
          <Link href={`/p/${record.id}/handovers/${handover.id}`}>
            {handoverNumber(handover, record)} · {whatMoves(handover, record, reader.locale)}
          </Link>
        </h3>
        <p className="small">
          {atStart(partyName(handover.from, record, reader))} to{' '}
          {partyName(handover.to, record, reader)},{' '}
          {isOpen(handover) ? since(at, reader) : day(at, reader)}
        </p>
      </div>
      <WordMark mark={mark} word={word} />
    </li>
  )
}
