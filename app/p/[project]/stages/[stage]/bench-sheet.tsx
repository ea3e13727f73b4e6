'use client'
import { useState } from 'react'
import { SelectField } from '@/app/_ui/form/text-field.tsx'
import { Mark } from '@/app/_ui/mark.tsx'
import { Head } from '@/app/_ui/paper.tsx'
import { Outcome } from '@/app/_ui/press/outcome.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { letGoOfCarried, type WorkedSum } from '@/app/sums/carried.ts'
import { checksOf } from '@/lib/gate/indexes.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import { useCommand } from '@/lib/live/use-command.ts'
import type { Check, Stage } from '@/lib/record/entities/work.ts'
import { convert, isUnit, unitsLike } from '@/lib/sums/units.ts'
import { reading } from '@/lib/words/money.ts'
import { atStart } from '@/lib/words/names.ts'
import { readingVerdict } from '@/lib/words/reading-verdict.ts'

/** States in which a stage takes evidence. */
const TAKES_EVIDENCE: ReadonlySet<string> = new Set(['in work', 'paused', 'ended', 'in doubt'])

/** A sum that was worked for this stage: it becomes a reading of one of its checks, or a note, or is left. */
export function BenchSheet({
  stage,
  sum,
  onDone,
}: {
  readonly stage: Stage
  readonly sum: WorkedSum
  readonly onDone: () => void
}) {
  const { standing } = useDesk()
  if (!standing.actsFor(stage.party)) return null
  const done = () => {
    letGoOfCarried()
    onDone()
  }
  return (
    <section className="sheet stack no-print" id="from-bench">
      <Head title="From the bench" />
      <div>
        <h3>{sum.title}</h3>
        <dl className="sum-figures">
          {sum.figures.map(({ label, shown }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{shown}</dd>
            </div>
          ))}
        </dl>
        {sum.verdict !== null && (
          <p className={sum.verdict.passes ? 'verdict' : 'verdict verdict-out'}>
            <Mark name={sum.verdict.passes ? 'met' : 'refused'} />
            <span>{sum.verdict.words}</span>
          </p>
        )}
      </div>
      {TAKES_EVIDENCE.has(stage.state) && <AsReading stage={stage} sum={sum} done={done} />}
      <AsNote stage={stage} sum={sum} done={done} />
      <button type="button" className="btn btn-line btn-small" onClick={done}>
        Leave it
      </button>
    </section>
  )
}

interface Put {
  readonly stage: Stage
  readonly sum: WorkedSum
  readonly done: () => void
}

/** A figure of the sum as the reading of a check: in the check's own unit, at full precision. */
function AsReading({ stage, sum, done }: Put) {
  const { record, reader } = useProject()
  const [chosen, setChosen] = useState('')
  const press = useCommand('check.record', done)
  const ways = checksOf(record.checks, stage.id)
    .filter(({ type }) => type === 'reading')
    .flatMap((check) =>
      sum.figures.flatMap((figure, at) => {
        const value = valueFor(check, figure)
        return value === null ? [] : [{ key: `${check.id} ${at}`, check, figure, value }]
      }),
    )
  if (ways.length === 0) return null
  const way = ways.find(({ key }) => key === chosen)
  return (
    <form
      className="stack tight"
      onSubmit={(event) => {
        event.preventDefault()
        if (way === undefined || press.waiting) return
        void press.send({ check: way.check.id, value: way.value, text: lines(sum).join('\n') })
      }}
    >
      <SelectField
        label="As the reading of a check"
        value={chosen}
        onChange={setChosen}
        none="Choose figure and check"
        options={ways.map(({ key, check, figure }) => ({
          value: key,
          label: `${figure.label}, ${figure.shown}: ${atStart(check.name)}`,
        }))}
      />
      {way !== undefined && (
        <>
          <p>{readingVerdict(way.check, way.value, reader.locale).text}</p>
          <button type="submit" className="btn btn-wide" aria-busy={press.waiting}>
            {press.waiting
              ? 'Sending…'
              : `Enter ${reading(way.value, way.check.unit, reader.locale)}`}
          </button>
        </>
      )}
      <Outcome press={press} stage={stage.id} />
    </form>
  )
}

function AsNote({ stage, sum, done }: Put) {
  const press = useCommand('note.write', done)
  const write = () => {
    if (!press.waiting)
      void press.send({ on: stage.id, text: lines(sum).join('\n'), sharing: 'shared' })
  }
  return (
    <div className="stack tight">
      <button
        type="button"
        className="btn btn-line btn-wide"
        aria-busy={press.waiting}
        onClick={write}
      >
        {press.waiting ? 'Sending…' : 'Put it down as a note, shared'}
      </button>
      <Outcome press={press} />
    </div>
  )
}

/** The figure in the check's own unit; null where it measures something else. */
function valueFor(check: Check, figure: WorkedSum['figures'][number]): number | null {
  const { value, unit } = figure
  if (value === null) return null
  if (check.unit === null || check.unit === unit) return value
  return isUnit(unit) && isUnit(check.unit) && unitsLike(unit).includes(check.unit)
    ? convert(value, unit, check.unit)
    : null
}

/** All that makes a sum evidence: what it comes to, from what, how, after whom. */
const lines = (sum: WorkedSum): readonly string[] => [
  `${sum.title}: ${sum.figures.map(({ label, shown }) => `${label} ${shown}`).join(', ')}.`,
  ...(sum.verdict === null ? [] : [`${sum.verdict.words}.`]),
  `Entered: ${sum.entered.join('; ')}.`,
  ...(sum.working.length === 0 ? [] : [`Working: ${sum.working.join('; ')}.`]),
  `Source: ${sum.source}`,
]
