'use client'
import type { Asked } from '@/app/_screen/asked.ts'
import { EmptyState } from '@/app/_ui/paper.tsx'
import { AsItStood } from './as-it-stood.tsx'
import { JournalScreen } from './journal-screen.tsx'

/** The journal, or the record as it stood on a day, by the address. Neither is kept on the phone. */
export function Journal({ search, source }: Asked) {
  if (source?.kind === 'as it stood') return <AsItStood day={search.at ?? ''} view={source.view} />
  if (source?.kind !== 'journal') {
    return (
      <EmptyState title="The journal needs a network">
        <p>This phone keeps how the car stands, not what led to it. Open it again with a signal.</p>
      </EmptyState>
    )
  }
  return (
    <JournalScreen
      first={source.page}
      filter={{
        person: search.person ?? '',
        command: search.command ?? '',
        entity: search.entity ?? '',
        older: (search.before ?? '') !== '',
      }}
    />
  )
}
