'use client'
import { useQuery } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import { getJournal } from '@/lib/live/http.ts'
import { useProject } from '@/lib/live/project-provider.tsx'

/** The first signs of a hash, in fours: enough to hold paper beside the journal. */
const SIGNS = 12

/** Which entry of the journal this stands on, and its check: on the screen and on paper. */
export function JournalMark({
  entity,
  onPaper,
}: {
  readonly entity: string
  /** On paper alone: on the screen it would stand in the way. */
  readonly onPaper?: boolean
}) {
  const { record, reader } = useProject()
  const { data } = useQuery({
    // The version at which it last changed: a later entry is asked for anew.
    queryKey: ['journal mark', record.id, entity, record.versions.get(entity) ?? 0],
    queryFn: async () => {
      const got = await getJournal(record.id, `entity=${entity}&limit=1`)
      return got.ok ? (got.data.entries[0] ?? null) : null
    },
    staleTime: Number.POSITIVE_INFINITY,
  })
  const [address, setAddress] = useState('')
  useEffect(() => setAddress(`${window.location.host}${window.location.pathname}`), [])
  const check = data?.hash.replace(/^.*:/, '').slice(0, SIGNS).match(/.{4}/g)?.join(' ')
  return (
    <p className={`small soft journal-mark ${onPaper === true ? 'paper-only' : ''}`}>
      {data !== undefined && data !== null && (
        <>
          Journal entry {new Intl.NumberFormat(reader.locale).format(data.sequence)} · check{' '}
          <span className="n">{check}</span>
        </>
      )}
      <span className="paper-only"> {address}</span>
    </p>
  )
}
