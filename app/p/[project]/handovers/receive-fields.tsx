'use client'
import { PickList } from '@/app/_ui/form/pick-list.tsx'
import { readWhole } from '@/app/_ui/form/read-whole.ts'
import { TextField } from '@/app/_ui/form/text-field.tsx'

/** How it may be received. */
export const OUTCOMES = ['accepted', 'accepted with remarks', 'refused'] as const
export type Outcome = (typeof OUTCOMES)[number]

/** What a receiver has typed so far. */
export interface ReceiptDraft {
  readonly outcome: Outcome | null
  readonly pieces: string
  readonly remarks: string
}
export const emptyReceipt: ReceiptDraft = { outcome: null, pieces: '', remarks: '' }

type Wrong = { readonly [field in 'outcome' | 'pieces' | 'remarks']?: string }
type ReadReceipt =
  | {
      readonly ok: true
      readonly input: {
        readonly outcome: Outcome
        readonly pieces: number
        readonly remarks: string
      }
    }
  | { readonly ok: false; readonly wrong: Wrong }

/** The receipt as the command takes it, or what is still wrong by field. */
export function readReceipt(
  { outcome, pieces, remarks }: ReceiptDraft,
  released: number,
): ReadReceipt {
  const count = readWhole(pieces)
  const wrong: { -readonly [field in keyof Wrong]: string } = {}
  if (outcome === null) wrong.outcome = 'Say how you receive it: one of these three.'
  if (count === null) wrong.pieces = 'Count what is there: a whole number, 0 where nothing came.'
  if (outcome === 'accepted' && count !== null && count !== released)
    wrong.outcome = `${released} were released and you count ${count}: accept it with remarks, or refuse it.`
  if (outcome !== null && outcome !== 'accepted' && remarks.trim() === '')
    wrong.remarks = 'Say what you saw: the other side reads it.'
  return outcome === null || count === null || Object.keys(wrong).length > 0
    ? { ok: false, wrong }
    : { ok: true, input: { outcome, pieces: count, remarks: remarks.trim() } }
}

/** How it is received, the count, the remarks: the same for a party with an account and for a guest. */
export function ReceiveFields({
  receipt,
  onChange,
  pieces,
  wrong,
}: {
  readonly receipt: ReceiptDraft
  readonly onChange: (receipt: ReceiptDraft) => void
  readonly pieces: number
  readonly wrong: Wrong
}) {
  const remarked = receipt.outcome !== null && receipt.outcome !== 'accepted'
  return (
    <>
      <TextField
        label="How many pieces do you count?"
        inputMode="numeric"
        value={receipt.pieces}
        onChange={(typed) => onChange({ ...receipt, pieces: typed })}
        wrong={wrong.pieces}
        hint={`${pieces === 1 ? '1 piece was' : `${pieces} pieces were`} released.`}
      />
      <PickList<Outcome>
        label="How do you receive it?"
        value={receipt.outcome}
        onChange={(outcome) => onChange({ ...receipt, outcome })}
        wrong={wrong.outcome}
        options={[
          { value: 'accepted', title: 'Accepted', text: 'All there, in the condition stated.' },
          {
            value: 'accepted with remarks',
            title: 'With remarks',
            text: 'You take it, and say what differs.',
          },
          { value: 'refused', title: 'Refused', text: 'It goes back. You never answered for it.' },
        ]}
      />
      <TextField
        label={remarked ? 'What did you see?' : 'Remarks, if any'}
        rows={3}
        value={receipt.remarks}
        onChange={(typed) => onChange({ ...receipt, remarks: typed })}
        wrong={wrong.remarks}
        hint="Both sides see it. Neither can take it back."
      />
    </>
  )
}
