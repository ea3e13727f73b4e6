'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { SelectField, TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { CommandButton } from '@/app/_ui/press/command-button.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import { EstimateLine } from '@/lib/record/entities/money.ts'
import type { Party } from '@/lib/record/entities/people.ts'
import { label } from '@/lib/words/labels.ts'
import { readAmount, readTaxRate } from '@/lib/words/read-amount.ts'

/** Adds a line to one's own first price, while no change to it has been agreed. */
export function EstimateForm({ party }: { readonly party: Party }) {
  const { reader } = useDesk()
  const { shops } = useProject()
  const press = usePress('estimate.add', 'Added to the estimate.')
  const own = shops.find(({ id }) => id === party.shop)
  const [text, setText] = useState('')
  const [type, setType] = useState<string>('fixed')
  const [net, setNet] = useState('')
  const [rate, setRate] = useState(
    own === undefined ? '' : String(own.taxRegistered ? own.taxRate / 100 : 0),
  )
  const [pressed, setPressed] = useState(false)
  const amount = readAmount(net, reader.currency)
  const taxRate = readTaxRate(rate)
  return (
    <details>
      <summary>Add a line</summary>
      <form
        className="stack"
        noValidate
        onSubmit={async (event) => {
          event.preventDefault()
          setPressed(true)
          if (text.trim() === '' || amount === null || taxRate === null) return
          const line = {
            text: text.trim(),
            type: EstimateLine.shape.type.parse(type),
            net: amount,
            taxRate,
          }
          if (!(await press.send({ party: party.id, lines: [line] }))) return
          setText('')
          setNet('')
          setPressed(false)
        }}
      >
        <TextField
          label="What for"
          value={text}
          onChange={setText}
          wrong={pressed && text.trim() === '' ? 'Say what it is for.' : undefined}
        />
        <SelectField
          label="How sure"
          value={type}
          onChange={setType}
          options={[
            { value: 'fixed', label: 'Fixed' },
            { value: 'allowance', label: 'Allowance: a place for what is not known yet' },
          ]}
        />
        <TextField
          label="Price before tax"
          value={net}
          onChange={setNet}
          wrong={pressed && amount === null ? 'A sum such as 1,240.00.' : undefined}
        />
        <TextField
          label="Tax, per cent"
          inputMode="decimal"
          value={rate}
          onChange={setRate}
          wrong={pressed && taxRate === null ? 'A rate from 0 to 100, such as 20.' : undefined}
        />
        <PressFoot press={press} lined label={label('estimate.add')} />
      </form>
    </details>
  )
}

/** Takes a line out of one's own first price. */
export function WithdrawLine({ line }: { readonly line: EstimateLine }) {
  return (
    <CommandButton
      name="estimate.withdraw"
      input={{ estimateLine: line.id }}
      line
      done={{ text: `${line.text} is out of the estimate.` }}
    >
      Withdraw
    </CommandButton>
  )
}
