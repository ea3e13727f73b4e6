'use client'
import { type ReactNode, useState } from 'react'
import { PickList } from '@/app/_ui/form/pick-list.tsx'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { ReasonFold } from '@/app/_ui/form/reason-fold.tsx'
import { SelectField, TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { Head } from '@/app/_ui/paper.tsx'
import { useRefusedInput } from '@/app/_ui/press/use-refused-input.ts'
import { partiesHere, useDesk } from '@/app/_ui/use-desk.ts'
import type { Part } from '@/lib/record/entities/things.ts'
import { label } from '@/lib/words/labels.ts'
import { partyName } from '@/lib/words/names.ts'
import { readAmount, typedAmount } from '@/lib/words/read-amount.ts'

/** Whatever this reader may press on the part now, the next step first. */
export function PartPresses({ part }: { readonly part: Part }) {
  const { standing } = useDesk()
  if (part.withdrawnAt !== null) return null
  const own = standing.actsFor(part.party)
  const told = own ? {} : { told: part.party }
  const acts = own || standing.managesLead
  const supplies = part.supplier !== null && standing.actsFor(part.supplier)
  const orderable = part.state === 'wanted' || part.state === 'rejected'
  return (
    <>
      {acts && orderable && <Order part={part} told={told} />}
      {(acts || supplies) && part.state === 'ordered' && (
        <Promised part={part} told={supplies ? {} : told} />
      )}
      {acts && (orderable || part.state === 'ordered') && <Arrive part={part} told={told} />}
      {own && part.state === 'arrived' && <Inspect part={part} />}
      {own && (part.state === 'inspected' || part.state === 'rejected') && (
        <Fold summary="Correct the inspection">
          <Inspect part={part} />
        </Fold>
      )}
      {(standing.managesFor(part.party) || standing.managesLead) && <Withdraw part={part} />}
    </>
  )
}

type Told = { readonly told?: Part['party'] }

function Fold({ summary, children }: { readonly summary: string; readonly children: ReactNode }) {
  return (
    <details>
      <summary>{summary}</summary>
      {children}
    </details>
  )
}

function Form({
  title,
  onSend,
  children,
}: {
  readonly title: string
  readonly onSend: () => void
  readonly children: ReactNode
}) {
  return (
    <form
      className="sheet stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        onSend()
      }}
    >
      <Head title={title} />
      {children}
    </form>
  )
}

function Order({ part, told }: { readonly part: Part; readonly told: Told }) {
  const { record, reader, standing } = useDesk()
  const press = usePress('part.order', `${part.name} is ordered.`)
  const [supplier, setSupplier] = useState<string>(part.supplier ?? '')
  const [price, setPrice] = useState('')
  const [promised, setPromised] = useState('')
  const [pressed, setPressed] = useState(false)
  const seesPrice = standing.managesFor(part.party)
  useRefusedInput(press.command, (input) => {
    const asked = input.text('price')
    setSupplier(input.text('supplier'))
    setPrice(asked === '' ? '' : typedAmount(Number(asked), reader.currency))
    setPromised(input.text('promised'))
  })
  const amount = price.trim() === '' ? undefined : readAmount(price, reader.currency)
  return (
    <Form
      title="Order it"
      onSend={() => {
        setPressed(true)
        if (amount === null) return
        void press.send({
          part: part.id,
          ...(supplier === '' ? {} : { supplier }),
          ...(amount === undefined ? {} : { price: amount }),
          ...(promised === '' ? {} : { promised }),
          ...told,
        })
      }}
    >
      <SelectField
        label="From whom"
        value={supplier}
        onChange={setSupplier}
        none="From outside the project"
        options={partiesHere(record)
          .filter(({ id, role }) => id !== part.party && role !== 'observer')
          .map(({ id, name }) => ({ value: id, label: name }))}
      />
      {seesPrice && (
        <TextField
          label="Price before tax"
          value={price}
          onChange={setPrice}
          wrong={
            pressed && amount === null
              ? 'A sum such as 240.00, or leave it empty.'
              : press.wrong('price')
          }
        />
      )}
      <TextField
        label="Promised for"
        type="date"
        value={promised}
        onChange={setPromised}
        wrong={press.wrong('promised')}
        hint="Empty where no day was promised yet."
      />
      <PressFoot press={press} label={label('part.order', { name: part.name })} />
    </Form>
  )
}

function Promised({ part, told }: { readonly part: Part; readonly told: Told }) {
  const press = usePress('part.promise', 'The promise is kept, beside the earlier ones.')
  const [date, setDate] = useState('')
  const [remark, setRemark] = useState('')
  const [pressed, setPressed] = useState(false)
  useRefusedInput(press.command, (input) => {
    setDate(input.text('date'))
    setRemark(input.text('remark'))
  })
  return (
    <Form
      title="A new promise"
      onSend={async () => {
        setPressed(true)
        if (date === '') return
        const sent = await press.send({ part: part.id, date, remark: remark.trim(), ...told })
        if (!sent) return
        setDate('')
        setRemark('')
        setPressed(false)
      }}
    >
      <TextField
        label="Promised for"
        type="date"
        value={date}
        onChange={setDate}
        wrong={pressed && date === '' ? 'Give the day that was promised.' : press.wrong('date')}
      />
      <TextField label="What was said" value={remark} onChange={setRemark} />
      <PressFoot press={press} label={label('part.promise')} note="Every promise stays visible." />
    </Form>
  )
}

function Arrive({ part, told }: { readonly part: Part; readonly told: Told }) {
  const { record, reader } = useDesk()
  const press = usePress('part.arrive', `${part.name} is here. Inspect it next.`)
  const [remark, setRemark] = useState('')
  useRefusedInput(press.command, (input) => setRemark(input.text('remark')))
  return (
    <Form
      title="It is here"
      onSend={() => {
        const words = remark.trim()
        void press.send({ part: part.id, ...(words === '' ? {} : { remark: words }), ...told })
      }}
    >
      <TextField label="How it came, if it matters" value={remark} onChange={setRemark} />
      <PressFoot
        press={press}
        lined={part.state !== 'ordered'}
        label={label('part.arrive', { name: part.name })}
        note={
          part.party === reader.view.party
            ? 'You inspect it before a stage may count on it.'
            : `${partyName(part.party, record)} inspects it before a stage may count on it.`
        }
      />
    </Form>
  )
}

function Inspect({ part }: { readonly part: Part }) {
  const press = usePress('part.inspect')
  const [outcome, setOutcome] = useState<'passed' | 'rejected' | null>(null)
  const [remark, setRemark] = useState('')
  const [pressed, setPressed] = useState(false)
  useRefusedInput(press.command, (input) => {
    setOutcome(input.is('outcome', 'passed') ? 'passed' : 'rejected')
    setRemark(input.text('remark'))
  })
  const must = outcome === 'rejected' || part.state !== 'arrived'
  const remarkWrong =
    must && remark.trim() === ''
      ? outcome === 'rejected'
        ? 'Say what is wrong with it.'
        : 'Say why it is corrected.'
      : undefined
  return (
    <Form
      title="Inspect it"
      onSend={() => {
        setPressed(true)
        if (outcome === null || remarkWrong !== undefined) return
        const words = remark.trim()
        void press.send({ part: part.id, outcome, ...(words === '' ? {} : { remark: words }) })
      }}
    >
      <PickList<'passed' | 'rejected'>
        label="Is it as ordered, and sound?"
        value={outcome}
        onChange={setOutcome}
        wrong={pressed && outcome === null ? 'Say which of the two.' : undefined}
        options={[
          { value: 'passed', title: 'Passed', text: 'Stages may count on it.' },
          { value: 'rejected', title: 'Rejected', text: 'It has to be ordered again.' },
        ]}
      />
      <TextField
        label="Remark"
        value={remark}
        onChange={setRemark}
        wrong={pressed ? (remarkWrong ?? press.wrong('remark')) : undefined}
      />
      <PressFoot press={press} label={label('part.inspect', { name: part.name })} />
    </Form>
  )
}

const Withdraw = ({ part }: { readonly part: Part }) => (
  <ReasonFold
    sheet
    name="part.withdraw"
    input={{ part: part.id }}
    label={label('part.withdraw')}
    summary="No longer needed"
    unsaid="Say why: its history stays."
    said={`${part.name} is off the list.`}
  />
)
