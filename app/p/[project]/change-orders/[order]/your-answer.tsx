'use client'
import { useMemo, useState } from 'react'
import { HeldPress } from '@/app/_ui/form/held-press.tsx'
import { ProveAgain, useProof } from '@/app/_ui/form/prove-again.tsx'
import { TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { Outcome } from '@/app/_ui/press/outcome.tsx'
import { useLive } from '@/lib/live/live-provider.tsx'
import { type Authority, type Shown, shownForApproval, shownText } from '@/lib/money/approval.ts'
import type { ChangeOrder } from '@/lib/record/entities/money.ts'
import { label } from '@/lib/words/labels.ts'
import { useMoneyView } from '../use-money-view.ts'
import { BothShown } from './both-shown.tsx'
import { WhatYesDoes } from './what-yes-does.tsx'

/**
 * The yes, the no, the question. What stands above the press is exactly what the yes is given to: its hash goes with it, and
 * when it has changed on the way both are shown and nothing was said.
 */
export function YourAnswer({
  order,
  authority,
}: {
  readonly order: ChangeOrder
  readonly authority: Authority
}) {
  const { record, sum } = useMoneyView()
  const live = useLive()
  const { shown, hash } = useMemo(() => {
    const now = shownForApproval(record, order.id, authority)
    return { shown: now, hash: shownText(now).hash }
  }, [record, order.id, authority])
  const approve = usePress('changeOrder.approve', 'Your yes is kept, with what you saw.')
  const decline = usePress('changeOrder.decline', 'Your no is kept.')
  const ask = usePress('changeOrder.ask')
  const proof = useProof()
  const [text, setText] = useState('')
  const [pressedOn, setPressedOn] = useState<Shown>()
  const [step, setStep] = useState<'answer' | 'ask' | 'decline'>('answer')
  const [asked, setAsked] = useState(false)
  const needsProof =
    authority === 'payer' &&
    (!proof.fresh || approve.command.refused.some(({ rule }) => rule === 'proof'))
  const changed = approve.command.refused.some(({ rule }) => rule === 'shown-changed')
  const words = text.trim() === '' ? {} : { text: text.trim() }

  const sayYes = async () => {
    setPressedOn(shown)
    const said = await approve.send({ changeOrder: order.id, shownHash: hash, ...words })
    // Refused, this phone may have missed what changed: then both can be shown only once it knows.
    if (!said) await live.refetch(record.id)
  }

  return (
    <>
      <WhatYesDoes shown={shown} bills={record.parties.rows.get(order.party)?.bills ?? 'owner'} />
      {changed && pressedOn !== undefined && <BothShown saw={pressedOn} now={shown} />}
      <section className="sheet">
        <TextField
          label={
            {
              answer: 'A word with your answer, if you like',
              ask: 'What do you want to know?',
              decline: 'Why not, if you like to say',
            }[step]
          }
          rows={2}
          value={text}
          onChange={setText}
          wrong={
            asked && step === 'ask' && text.trim() === '' ? 'Write the question first.' : undefined
          }
        />
      </section>
      <Outcome press={approve.command} />
      <Outcome press={decline.command} />
      <Outcome press={ask.command} />
      <section className="sheet-foot stack tight" id="answer" aria-label="Your answer">
        {step === 'decline' && (
          <>
            <p className="small" role="status">
              A no is kept too. The shop may raise it anew.
            </p>
            <button
              type="button"
              className="btn btn-line btn-wide"
              disabled={decline.waiting}
              onClick={() => void decline.send({ changeOrder: order.id, ...words })}
            >
              Yes, decline it
            </button>
          </>
        )}
        {step !== 'answer' ? null : needsProof ? (
          <ProveAgain
            proof={proof}
            why="A yes needs a proof of who you are, at most ten minutes old. All you typed is kept."
            onProved={() => approve.command.reset()}
          />
        ) : (
          <HeldPress
            label={label('changeOrder.approve', { sum: sum(shown.billed.gross) })}
            hint="Hold for a second. We keep what you saw, when, and your answer."
            waiting={approve.waiting}
            onPressed={() => void sayYes()}
          />
        )}
        <div className="pair">
          <button
            type="button"
            className="btn btn-line"
            disabled={ask.waiting}
            onClick={async () => {
              setAsked(step === 'ask')
              setStep('ask')
              if (text.trim() === '') return
              if (await ask.send({ changeOrder: order.id, text: text.trim() })) {
                setText('')
                setStep('answer')
              }
            }}
          >
            {step === 'ask' ? 'Send the question' : 'Ask first'}
          </button>
          {/* What comes up under a thumb that presses twice takes nothing: the no itself stands elsewhere. */}
          {step === 'decline' ? (
            <button type="button" className="btn btn-line" onClick={() => setStep('answer')}>
              Not yet
            </button>
          ) : (
            <button type="button" className="btn btn-line" onClick={() => setStep('decline')}>
              <i className="mark m-declined" aria-hidden="true" />
              Decline
            </button>
          )}
        </div>
        {step === 'ask' && text.trim() === '' && (
          <p className="small" role="status">
            Write your question above, then press again.
          </p>
        )}
      </section>
    </>
  )
}
