'use client'
import { useEffect, useState } from 'react'
import * as z from 'zod/mini'
import { askServer, posting } from '@/app/_ui/door/ask-server.ts'
import { signInWith } from '@/app/_ui/door/sign-in-with.ts'
import { SHORTEST_PASSWORD } from '@/app/_ui/form/shortest-password.ts'
import { SelectField, TextField, TickField } from '@/app/_ui/form/text-field.tsx'
import { useCurrencies, useTimeZones } from '@/app/_ui/form/zones-and-currencies.ts'
import type { FirstShop } from '@/lib/command/wire-access.ts'
import { readTaxRate } from '@/lib/words/read-amount.ts'

interface Draft {
  readonly shop: string
  readonly currency: string
  readonly timeZone: string
  readonly taxRegistered: boolean
  readonly taxRate: string
  readonly name: string
  readonly email: string
  readonly password: string
}
type Wrong = { readonly [field: string]: string }

function check(draft: Draft): { readonly wrong: Wrong; readonly ready: FirstShop | null } {
  const wrong: { [field: string]: string } = {}
  const taxRate = draft.taxRegistered ? readTaxRate(draft.taxRate) : 0
  if (draft.shop.trim() === '') wrong.shop = 'Give the shop’s name.'
  if (draft.name.trim() === '') wrong.name = 'Give your name, as the others know it.'
  if (!/^\S+@\S+\.\S+$/.test(draft.email.trim()))
    wrong.email = 'Give an e-mail address such as ada@shop.example.'
  if (draft.password.length < SHORTEST_PASSWORD)
    wrong.password = `At least ${SHORTEST_PASSWORD} characters; several words do well.`
  if (taxRate === null) wrong.taxRate = 'Give a rate from 0 to 100 per cent, such as 20.'
  if (taxRate === null || Object.keys(wrong).length > 0) return { wrong, ready: null }
  const { currency, timeZone, taxRegistered, password } = draft
  const texts = { shop: draft.shop.trim(), name: draft.name.trim(), email: draft.email.trim() }
  return { wrong, ready: { ...texts, currency, timeZone, taxRegistered, taxRate, password } }
}

/** Creates the lead shop and its first person, and signs them in. */
export function FirstShopForm() {
  const [draft, setDraft] = useState<Draft>({
    shop: '',
    currency: 'GBP',
    timeZone: 'Europe/London',
    taxRegistered: true,
    taxRate: '20',
    name: '',
    email: '',
    password: '',
  })
  const [said, setSaid] = useState<Wrong>({})
  const [waiting, setWaiting] = useState(false)
  const currencies = useCurrencies()
  const zones = useTimeZones(draft.timeZone)
  // The server can't know where the shop is; the browser does.
  useEffect(() => {
    const { timeZone } = Intl.DateTimeFormat().resolvedOptions()
    setDraft((typed) => ({ ...typed, timeZone }))
  }, [])
  const set = (field: keyof Draft) => (value: string) => setDraft({ ...draft, [field]: value })

  const create = async () => {
    const { wrong, ready } = check(draft)
    setSaid(wrong)
    if (ready === null) return
    setWaiting(true)
    const answer = await askServer(z.unknown(), '/api/installation/shop', posting(ready))
    if (answer.ok) {
      // The answer signs in by itself; where a browser did not keep that, the password does.
      await signInWith('password', { email: ready.email, password: ready.password })
      window.location.assign('/')
      return
    }
    setWaiting(false)
    setSaid({ [answer.field || 'all']: answer.message })
  }

  return (
    <form
      className="sheet stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        void create()
      }}
    >
      <div className="head">
        <h2>Set up your shop</h2>
      </div>
      <p>You become its manager and invite everyone else: hands, the other shops, the owner.</p>
      <TextField
        label="Name of the shop"
        value={draft.shop}
        onChange={set('shop')}
        wrong={said.shop}
      />
      <TextField
        label="Your name"
        autoComplete="name"
        value={draft.name}
        onChange={set('name')}
        wrong={said.name}
      />
      <TextField
        label="Your e-mail address"
        type="email"
        inputMode="email"
        autoComplete="username"
        value={draft.email}
        onChange={set('email')}
        wrong={said.email}
      />
      <TextField
        label="A password"
        type="password"
        autoComplete="new-password"
        value={draft.password}
        onChange={set('password')}
        wrong={said.password}
        hint={`At least ${SHORTEST_PASSWORD} characters.`}
      />
      <SelectField
        label="Currency"
        value={draft.currency}
        onChange={set('currency')}
        options={currencies}
        wrong={said.currency}
      />
      <SelectField
        label="Time zone of the shop"
        value={draft.timeZone}
        onChange={set('timeZone')}
        options={zones}
        wrong={said.timeZone}
      />
      <TickField
        label="Registered for VAT or sales tax"
        checked={draft.taxRegistered}
        onChange={(taxRegistered) => setDraft({ ...draft, taxRegistered })}
      />
      {draft.taxRegistered && (
        <TextField
          label="Its usual rate, per cent"
          inputMode="decimal"
          value={draft.taxRate}
          onChange={set('taxRate')}
          wrong={said.taxRate}
        />
      )}
      {said.all !== undefined && (
        <p className="wrong" role="alert">
          {said.all}
        </p>
      )}
      <button type="submit" className="btn btn-wide" disabled={waiting}>
        {waiting ? 'Setting up…' : 'Create the shop and sign in'}
      </button>
    </form>
  )
}
