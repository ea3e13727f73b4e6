'use client'
import type { Asked } from '@/app/_screen/asked.ts'
import { NeedsNetwork } from '@/app/_screen/needs-network.tsx'
import { AsItStood } from './as-it-stood.tsx'
import { JournalScreen } from './journal-screen.tsx'

/** The journal, or the record as it stood on a day, by the address. Neither is kept on the phone. */
export function Journal({ search, source }: Asked) {
  if (source?.kind === 'as it stood') return <AsItStood day={search.at ?? ''} view={source.view} />
  if (source?.kind !== 'journal') {
    return (
      <NeedsNetwork what="The journal">
        This phone keeps how the car stands, not what led to it.
      </NeedsNetwork>
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
