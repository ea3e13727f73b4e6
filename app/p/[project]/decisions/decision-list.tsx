'use client'
import Link from 'next/link'
import { EmptyState, Head } from '@/app/_ui/paper.tsx'
import { RowList } from '@/app/_ui/row-list.tsx'
import { WordMark } from '@/app/_ui/state-mark.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import type { Decision } from '@/lib/record/entities/money.ts'
import { all } from '@/lib/record/table.ts'
import { day, since } from '@/lib/words/dates.ts'
import { partyName } from '@/lib/words/names.ts'

/** Choices to be made, by the day they are needed, then those that were made. */
export function DecisionList() {
  const { record, standing } = useDesk()
  const decisions = all(record.decisions)
  const asked = decisions
    .filter(({ state }) => state === 'asked')
    .toSorted((a, b) => (a.decideBy ?? '9999').localeCompare(b.decideBy ?? '9999'))
  const past = decisions
    .filter(({ state }) => state !== 'asked')
    .toSorted((a, b) => b.askedAt.localeCompare(a.askedAt))
  const asks =
    standing.managesFor(standing.party) && record.parties.rows.get(standing.party)?.role === 'shop'
  return (
    <div className="stack">
      {asks && (
        <p>
          <Link className="btn" href={`/p/${record.id}/decisions/new`}>
            Ask for a decision
          </Link>
        </p>
      )}
      {decisions.length === 0 && (
        <EmptyState title="Nothing to decide">
          A shop puts a choice here with its options; stages that hang on it wait until it is made.
        </EmptyState>
      )}
      {asked.length > 0 && (
        <section className="sheet stack">
          <Head title="To be decided" note={String(asked.length)} />
          <RowList className="ruled">
            {asked.map((decision) => (
              <DecisionRow key={decision.id} decision={decision} />
            ))}
          </RowList>
        </section>
      )}
      {past.length > 0 && (
        <section className="sheet stack">
          <Head title="Decided" />
          <RowList className="ruled">
            {past.map((decision) => (
              <DecisionRow key={decision.id} decision={decision} />
            ))}
          </RowList>
        </section>
      )}
    </div>
  )
}

function DecisionRow({ decision }: { readonly decision: Decision }) {
  const { record, reader } = useDesk()
  const { state, decideBy, chooser, chosenAt } = decision
  const chosen = record.decisionOptions.rows.get(decision.chosen ?? '')
  return (
    <li className="rowend row-chip">
      <div>
        <h3>
          <Link href={`/p/${record.id}/decisions/${decision.id}`}>{decision.question}</Link>
        </h3>
        <p className="small">
          {state === 'asked'
            ? `${partyName(decision.party, record, reader)} asked ${partyName(chooser, record, reader)} ${
                decideBy === null
                  ? since(decision.askedAt, reader)
                  : `to decide by ${day(decideBy, reader)}`
              }`
            : chosen === undefined
              ? 'withdrawn'
              : `${chosen.text}, ${chosenAt === null ? '' : since(chosenAt, reader)}`}
        </p>
      </div>
      <WordMark
        mark={state === 'asked' ? 'held' : state === 'chosen' ? 'met' : 'reopened'}
        word={
          state === 'asked'
            ? chooser === reader.view.party
              ? 'Held for your choice'
              : 'Held for a choice'
            : state === 'chosen'
              ? 'Chosen'
              : 'Withdrawn'
        }
      />
    </li>
  )
}
