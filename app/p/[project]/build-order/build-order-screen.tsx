'use client'
import Link from 'next/link'
import { lazy, Suspense, useDeferredValue, useMemo, useState, useSyncExternalStore } from 'react'
import { afterPaint } from '@/app/_screen/after-paint.ts'
import { EmptyState, Head } from '@/app/_ui/paper.tsx'
import { projectPath } from '@/app/_ui/paths.ts'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { all } from '@/lib/record/table.ts'
import { day } from '@/lib/words/dates.ts'
import { runBegins, runNumbers } from '@/lib/words/laid.ts'
import { findStages, groupStages, type Search, type StageGroup } from './group-stages.ts'
import { SearchFields } from './search-fields.tsx'
import { StageTable } from './stage-table.tsx'
import { useLaidOut } from './use-laid-out.ts'

const Drawing = lazy(() =>
  afterPaint(async () => ({ default: (await import('./drawn/drawing.tsx')).Drawing })),
)

/**
 * The build order: drawn along the days by shop at a desk, and on a phone when asked for; and as a list, which says all that is
 * drawn and can be searched.
 */
export function BuildOrderScreen({ assembly }: { readonly assembly: string | null }) {
  const { record, reader, standing } = useDesk()
  const { laidOut, stateOf } = useLaidOut()
  const nothing = { words: '', state: '', assembly: '', shop: '' } as const
  const [search, setSearch] = useState<Search>({
    ...nothing,
    assembly: assembly ?? '',
    by: 'week',
  })
  const [most, setMost] = useState(PAGE)
  const [asked, setAsked] = useState(false)
  const looked = useDeferredValue(search)
  const found = useMemo(() => findStages(record, looked, stateOf), [record, looked, stateOf])
  const groups = useMemo(
    () => groupStages(record, found, looked.by, laidOut, reader),
    [record, found, looked.by, laidOut, reader],
  )
  const isWide = useIsWide()
  const count = found.length
  const of = all(record.stages).filter(({ removedAt }) => removedAt === null).length
  return (
    <div className="stack">
      <Head title="Build order" note={count === of ? `${of} stages` : `${count} of ${of}`} />
      {laidOut.end !== null && (
        <p>
          The <b>critical run</b> is <b>{runNumbers(laidOut.run, record)}</b>: it sets the end.{' '}
          {runBegins(laidOut, record, reader)} As the build order stands, without odds, the last of
          it would end {day(laidOut.end, reader)}.
        </p>
      )}
      <SearchFields search={search} onChange={setSearch} />
      {count === 0 && (
        <EmptyState title={of === 0 ? 'No stage yet' : 'No stage fits that'}>
          {of === 0 ? (
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
              onClick={() => setSearch({ ...search, ...nothing })}
            >
              Show all stages
            </button>
          )}
        </EmptyState>
      )}
      {count > 0 && (
        <>
          <button
            type="button"
            className="btn btn-line btn-wide phone"
            aria-expanded={asked}
            onClick={() => setAsked(!asked)}
          >
            {asked ? 'Put the drawing away' : 'Draw it along the days'}
          </button>
          {isWide || asked ? (
            <Suspense fallback={<div className="drawn-room" />}>
              <Drawing stages={found} laidOut={laidOut} stateOf={stateOf} />
            </Suspense>
          ) : (
            <div className="drawn-room desk" />
          )}
          <StageTable
            groups={firstOf(groups, most)}
            folds={isPlain(search)}
            laidOut={laidOut}
            stateOf={stateOf}
          />
        </>
      )}
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

/** As many stages as are listed at once. */
const PAGE = 150

/** Nothing is looked for: what is over may be folded away. */
const isPlain = ({ words, state, assembly, shop }: Search): boolean =>
  words.trim() === '' && state === '' && assembly === '' && shop === ''

/** The groups up to so many stages in all. */
function firstOf(groups: readonly StageGroup[], most: number): readonly StageGroup[] {
  let left = most
  return groups.flatMap((group) => {
    const stages = group.stages.slice(0, Math.max(0, left))
    left -= stages.length
    return stages.length === 0 ? [] : [{ ...group, stages }]
  })
}

const WIDE = '(min-width: 900px)'

/** A desk, once the browser has said so: the drawing isn't even loaded on a phone that doesn't ask for it. */
const useIsWide = (): boolean =>
  useSyncExternalStore(
    (onChange) => {
      const query = matchMedia(WIDE)
      query.addEventListener('change', onChange)
      return () => query.removeEventListener('change', onChange)
    },
    () => matchMedia(WIDE).matches,
    () => false,
  )
