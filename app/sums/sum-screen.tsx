'use client'
import Link from 'next/link'
import { useEffect, useState } from 'react'
import { Cautions } from '@/app/_ui/cautions.tsx'
import { Mark } from '@/app/_ui/mark.tsx'
import { EmptyState, Plate } from '@/app/_ui/paper.tsx'
import { PrintButton } from '@/app/_ui/print-button.tsx'
import { usePhonePlace } from '@/app/_ui/use-phone-place.ts'
import { sumNamed } from '@/lib/sums/all-sums.ts'
import type { Sum } from '@/lib/sums/sum.ts'
import { type Typed, type Worked, workTyped } from '@/lib/sums/typed.ts'
import { moment } from '@/lib/words/dates.ts'
import { decimalSign } from '@/lib/words/reading-verdict.ts'
import { type ForStage, stagePath, sumsPath } from './for-stage.ts'
import { PutOnStage } from './put-on-stage.tsx'
import { SumForm } from './sum-form.tsx'
import { AboutSum, SumResult } from './sum-result.tsx'
import { useOwnName } from './use-own-name.ts'
import { enteredLines, figureSaid, keepTyped, typedBefore } from './worked-sum.ts'

/** One sum of the bench by its name. */
export function SumScreen({
  name,
  stage,
}: {
  readonly name: string
  readonly stage: ForStage | null
}) {
  const sum = sumNamed(name)
  return (
    <main className="page stack" id="content">
      <Plate
        title={sum?.title ?? 'Bench sums'}
        under={sum === undefined ? '' : 'A sum of the bench'}
      />
      <p className="way row">
        <Link prefetch={false} href={sumsPath(stage)}>
          All sums
        </Link>
        {stage !== null && (
          <Link prefetch={false} href={stagePath(stage)}>
            Back to the stage
          </Link>
        )}
      </p>
      {sum === undefined ? (
        <EmptyState title={`There is no sum called ${name}`}>
          <p>It stands under another name in the list of all sums.</p>
        </EmptyState>
      ) : (
        <Bench key={sum.name} sum={sum} stage={stage} />
      )}
    </main>
  )
}

const NOTHING: Typed = {}

/** On a phone the first figure stays in sight above the fields while they are typed in, and leads to the others. */
function SoFar({
  result,
  decimal,
}: {
  readonly result: Worked['result']
  readonly decimal: '.' | ','
}) {
  const first = result?.figures[0]
  // It has its place from the first: no key moves under the thumb as a result comes.
  if (result === null || first === undefined)
    return (
      <p className="sum-now no-print">
        <span>Comes to</span>
        <b>not yet</b>
      </p>
    )
  return (
    <a className="sum-now no-print" href="#comes-to">
      <span>
        {result.verdict !== null && (
          <>
            <Mark name={result.verdict.passes ? 'met' : 'refused'} />{' '}
          </>
        )}
        {result.verdict?.words ?? first.label}
      </span>
      <b>{figureSaid(first, decimal)}</b>
    </a>
  )
}

/** The fields, what they come to as they are typed, and where that may go. */
function Bench({ sum, stage }: { readonly sum: Sum; readonly stage: ForStage | null }) {
  const place = usePhonePlace()
  const name = useOwnName()
  const decimal = decimalSign(place.locale)
  const [here, setTyped] = useState<Typed | null>(null)
  const typed = here ?? NOTHING
  // What came before this page was ready is newer than what lay in the tab.
  useEffect(() => setTyped((early) => ({ ...typedBefore(sum.name), ...early })), [sum.name])
  useEffect(() => {
    if (here !== null) keepTyped(sum.name, here)
  }, [sum.name, here])
  const change = (by: (typed: Typed) => Typed) => setTyped((now) => by(now ?? NOTHING))
  const worked = workTyped(sum, typed, decimal)
  const { result } = worked
  const entered = enteredLines(sum, typed)
  // The server doesn't know the phone's clock.
  const at = here === null ? '' : moment(place.now, place)
  const by = [name === '' ? '' : `by ${name}`, at].filter((part) => part !== '').join(', ')
  return (
    <>
      <Cautions hazards={sum.hazards} />
      <SoFar result={result} decimal={decimal} />
      <div className="cols cols-2">
        <SumForm sum={sum} typed={typed} change={change} wrong={worked.wrong} decimal={decimal} />
        <div className="stack">
          <SumResult worked={worked} entered={entered} by={by} decimal={decimal} />
          {result !== null && (
            <PutOnStage
              asked={stage}
              sum={{
                title: sum.title,
                figures: result.figures.map((figure) => ({
                  label: figure.label,
                  value: typeof figure.value === 'number' ? figure.value : null,
                  unit: figure.unit,
                  shown: figureSaid(figure, decimal),
                })),
                verdict: result.verdict,
                entered: [...entered],
                working: [...result.working],
                source: sum.source,
              }}
            />
          )}
          <AboutSum sum={sum} />
          <div className="pair no-print">
            <PrintButton label="Print it" />
            <button
              type="button"
              className="btn btn-line btn-wide"
              onClick={() => change(() => NOTHING)}
              disabled={Object.keys(typed).length === 0}
            >
              Clear the fields
            </button>
          </div>
        </div>
      </div>
    </>
  )
}
