'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { ProveAgain, useProof } from '@/app/_ui/form/prove-again.tsx'
import { TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { Head } from '@/app/_ui/paper.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { standingConsentUsed } from '@/lib/money/standing-consent.ts'
import { money } from '@/lib/words/money.ts'
import { readAmount, typedAmount } from '@/lib/words/read-amount.ts'

/** A sum that may be left out: null where it is; undefined where it is no sum. */
function readLimit(typed: string, currency: string): number | null | undefined {
  if (typed.trim() === '') return null
  const amount = readAmount(typed, currency)
  return amount === null || amount < 0 ? undefined : amount
}

/** What the owner allows the lead in advance: up to a sum each, and in all, tax included. With fresh proof, as a yes. */
export function ConsentForm() {
  const { record, reader } = useDesk()
  const project = record.projects.rows.get(record.id)
  const press = usePress('project.describe', 'Kept. It holds until you change it.')
  const proof = useProof()
  const { currency, locale } = reader
  const typed = (sum: number | null | undefined) =>
    typeof sum === 'number' ? typedAmount(sum, currency) : ''
  const [each, setEach] = useState(typed(project?.standingConsentEach))
  const [total, setTotal] = useState(typed(project?.standingConsentTotal))
  const [pressed, setPressed] = useState(false)
  const eachRead = readLimit(each, currency)
  const totalRead = readLimit(total, currency)
  const wrong = 'A sum such as 250.00, or nothing.'
  const needsProof = !proof.fresh || press.command.refused.some(({ rule }) => rule === 'proof')
  return (
    <section className="sheet stack">
      <Head title="Standing consent" note="tax included" />
      <p>
        What the lead may begin without asking you first. Used so far:{' '}
        <b className="money">{money(standingConsentUsed(record), currency, locale)}</b>. Both empty:
        nothing.
      </p>
      {needsProof && (
        <ProveAgain
          proof={proof}
          why="This needs a proof of who you are, at most ten minutes old."
          onProved={() => press.command.reset()}
        />
      )}
      <form
        className="stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault()
          setPressed(true)
          if (eachRead === undefined || totalRead === undefined) return
          void press.send({ standingConsentEach: eachRead, standingConsentTotal: totalRead })
        }}
      >
        <TextField
          label="Up to, each time"
          value={each}
          onChange={setEach}
          wrong={pressed && eachRead === undefined ? wrong : press.wrong('standingConsentEach')}
        />
        <TextField
          label="Up to, in all"
          value={total}
          onChange={setTotal}
          wrong={pressed && totalRead === undefined ? wrong : press.wrong('standingConsentTotal')}
        />
        <PressFoot press={press} lined label="Keep it so" disabled={needsProof} />
      </form>
    </section>
  )
}
