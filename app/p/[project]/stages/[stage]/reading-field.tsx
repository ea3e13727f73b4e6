'use client'
import { type FocusEvent, useEffect, useId, useRef, useState } from 'react'
import { NumberPad } from '@/app/_ui/form/number-pad.tsx'
import { useThumb } from '@/app/_ui/form/use-thumb.ts'
import { Mark } from '@/app/_ui/mark.tsx'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { Check } from '@/lib/record/entities/work.ts'
import { limits } from '@/lib/words/money.ts'
import { readQuantity } from '@/lib/words/read-amount.ts'
import { decimalSign, readingVerdict, type Verdict } from '@/lib/words/reading-verdict.ts'
import { Gauge } from './gauge.tsx'

/** A figure is read out when the typing pauses, in ms: not each key of it. */
const PAUSE_MS = 700

/**
 * Where a reading is typed: its unit, its limits and what the figure is worth in view meanwhile. Under a thumb big keys of our own
 * rise with it; at a desk it is a plain field.
 */
export function ReadingField({
  check,
  typed,
  onChange,
  wrong,
  waiting,
}: {
  readonly check: Check
  readonly typed: string
  readonly onChange: (typed: string) => void
  /** What is wrong with what was typed; empty where all is well. */
  readonly wrong: string
  readonly waiting: boolean
}) {
  const { reader } = useProject()
  const { locale } = reader
  const thumb = useThumb()
  const [open, setOpen] = useState(false)
  const id = useId()
  const box = useRef<HTMLFieldSetElement>(null)
  const value = readQuantity(typed)
  const verdict = value === null ? null : readingVerdict(check, value, locale)
  const padded = thumb && open

  useEffect(() => {
    // The keys stand under the field: both are brought into sight.
    if (padded) box.current?.scrollIntoView({ block: 'nearest' })
  }, [padded])

  const left = (event: FocusEvent<HTMLFieldSetElement>) => {
    // A tap beside it takes the focus nowhere and leaves the keys where they are; another field takes it.
    const to = event.relatedTarget
    if (to instanceof Node && !event.currentTarget.contains(to)) setOpen(false)
  }
  const send = (
    <button type="submit" className={padded ? 'btn btn-wide' : 'btn btn-line'}>
      {waiting ? 'Sending…' : 'Enter'}
    </button>
  )
  return (
    <fieldset
      ref={box}
      aria-label={check.name}
      className={padded ? 'reading stack tight pad-open' : 'reading stack tight'}
      onBlur={left}
    >
      <div className={padded ? '' : 'enter-row'}>
        <div className="field">
          <label htmlFor={id}>Reading{check.unit === null ? '' : `, ${check.unit}`}</label>
          <input
            id={id}
            inputMode={thumb ? 'none' : 'decimal'}
            autoComplete="off"
            value={typed}
            aria-invalid={wrong !== ''}
            aria-describedby={`${id}-worth`}
            onFocus={() => setOpen(true)}
            onClick={() => setOpen(true)}
            onChange={(event) => onChange(event.target.value)}
          />
        </div>
        {!padded && send}
      </div>
      <Worth id={`${id}-worth`} check={check} verdict={verdict} wrong={wrong} padded={padded} />
      {padded && (
        <>
          {check.least !== null && check.greatest !== null && (
            <div className="pad-gauge">
              {value !== null && verdict !== null && (
                <Gauge
                  check={{ ...check, value, state: verdict.within ? 'passed' : 'out of limits' }}
                />
              )}
            </div>
          )}
          <NumberPad
            label={`Keys for the reading: ${check.name}`}
            value={typed}
            onChange={onChange}
            decimal={decimalSign(locale)}
            minus={check.least === null || check.least < 0}
          >
            {send}
          </NumberPad>
        </>
      )}
    </fieldset>
  )
}

/** What the figure is worth, in words, or the limits while there is none. */
function Worth({
  id,
  check,
  verdict,
  wrong,
  padded,
}: {
  readonly id: string
  readonly check: Check
  readonly verdict: Verdict | null
  readonly wrong: string
  /** The row that it stands in may be out of sight by now. */
  readonly padded: boolean
}) {
  const { reader } = useProject()
  const [said, setSaid] = useState('')
  const words = verdict?.text ?? ''
  useEffect(() => {
    const timer = setTimeout(() => setSaid(words), PAUSE_MS)
    return () => clearTimeout(timer)
  }, [words])
  const judged = verdict !== null && (check.least !== null || check.greatest !== null)
  return (
    <>
      <div id={id}>
        {wrong !== '' && (
          <p className="wrong" role="alert">
            {wrong}
          </p>
        )}
        {verdict !== null ? (
          <p className={verdict.within ? 'verdict' : 'verdict verdict-out'}>
            {judged && <Mark name={verdict.within ? 'met' : 'refused'} />}
            <span>{verdict.text}</span>
          </p>
        ) : (
          padded && <p className="verdict">{limits(check, reader.locale)}</p>
        )}
      </div>
      <output className="sr-only">{said}</output>
    </>
  )
}
