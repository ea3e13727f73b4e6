'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { SelectField, TextField, TickField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { useTimeZones } from '@/app/_ui/form/zones-and-currencies.ts'
import { EmptyState, Head } from '@/app/_ui/paper.tsx'
import { useShop } from '@/lib/live/shop-provider.tsx'
import type { Shop } from '@/lib/record/entities/people.ts'
import { label } from '@/lib/words/labels.ts'
import { readTaxRate } from '@/lib/words/read-amount.ts'
import { Bays } from './bays.tsx'
import { ShopPhones } from './phones.tsx'

/** What the shop says of itself, and its bays; its manager changes them. */
export function ShopSetUp() {
  const { book, role } = useShop()
  const shop = book.shops.rows.get(book.id)
  if (shop === undefined) return <EmptyState title="This shop isn’t here" />
  if (role !== 'manager')
    return <EmptyState title="The shop’s manager sets it up.">Ask them to.</EmptyState>
  return (
    <div className="cols cols-2">
      <div className="stack">
        <DescribeShop shop={shop} />
        <Bays />
      </div>
      <div className="stack">
        <ShopPhones />
      </div>
    </div>
  )
}

function DescribeShop({ shop }: { readonly shop: Shop }) {
  const press = usePress('shop.describe', 'Saved.')
  const [name, setName] = useState(shop.name)
  const [opensAt, setOpensAt] = useState(shop.opensAt)
  const [closesAt, setClosesAt] = useState(shop.closesAt)
  const [timeZone, setTimeZone] = useState(shop.timeZone)
  const [registered, setRegistered] = useState(shop.taxRegistered)
  const [rate, setRate] = useState(String(shop.taxRate / 100))
  const zones = useTimeZones(timeZone)
  const taxRate = registered ? readTaxRate(rate) : 0
  const closesWrong =
    closesAt <= opensAt ? 'It closes before it opens: give a later time.' : undefined
  return (
    <form
      className="sheet stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        if (name.trim() === '' || taxRate === null || closesWrong !== undefined) return
        void press.send({
          name: name.trim(),
          opensAt,
          closesAt,
          timeZone,
          taxRegistered: registered,
          taxRate,
        })
      }}
    >
      <Head title="The shop" />
      <TextField
        label="Name"
        value={name}
        onChange={setName}
        wrong={name.trim() === '' ? 'Give the shop’s name.' : press.wrong('name')}
      />
      <div className="pair">
        <TextField label="Opens at" type="time" value={opensAt} onChange={setOpensAt} />
        <TextField
          label="Closes at"
          type="time"
          value={closesAt}
          onChange={setClosesAt}
          wrong={closesWrong ?? press.wrong('closesAt')}
        />
      </div>
      <SelectField
        label="Time zone"
        value={timeZone}
        onChange={setTimeZone}
        options={zones}
        hint="The diary and all its days go by it."
      />
      <TickField
        label="Registered for VAT or sales tax"
        checked={registered}
        onChange={setRegistered}
      />
      {registered && (
        <TextField
          label="Its usual rate, per cent"
          inputMode="decimal"
          value={rate}
          onChange={setRate}
          wrong={taxRate === null ? 'A rate from 0 to 100, such as 20.' : press.wrong('taxRate')}
          hint="Lines written before keep theirs."
        />
      )}
      <dl className="facts">
        <dt>Currency</dt>
        <dd>{shop.currency}</dd>
      </dl>
      <PressFoot press={press} label={label('shop.describe')} />
    </form>
  )
}
