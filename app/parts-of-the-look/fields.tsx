'use client'
import { useState } from 'react'
import { FingerSignature } from '@/app/_ui/form/finger-signature.tsx'
import { PickList } from '@/app/_ui/form/pick-list.tsx'
import { SelectField, TextField, TickField } from '@/app/_ui/form/text-field.tsx'

const DRAWN = 'M60 150L90 60L130 140L170 70L200 150L260 100L330 130L420 90L520 120'

/** Fields empty, filled, wrong and closed; choices; and what a finger draws. */
export function Fields() {
  const [reading, setReading] = useState('11.2')
  const [words, setWords] = useState('')
  const [shop, setShop] = useState('')
  const [ticked, setTicked] = useState(true)
  const [picked, setPicked] = useState<'black' | 'fawn'>('fawn')
  const [path, setPath] = useState(DRAWN)
  return (
    <>
      <div className="sheet stack">
        <TextField
          label="Reading, bar"
          inputMode="decimal"
          hint="limits 10.3 to 12.0 bar"
          value={reading}
          onChange={setReading}
        />
        <TextField
          label="Reading, mm"
          inputMode="decimal"
          wrong="This is no figure. Enter one such as 0.11."
          hint="at most 0.10 mm"
          value="o.11"
          onChange={() => {}}
        />
        <TextField
          label="Why it may be passed"
          rows={2}
          placeholder="What did you see?"
          hint="It stays on the card for good, with your name."
          value={words}
          onChange={setWords}
        />
        <TextField label="Number" value="3L/0417" onChange={() => {}} disabled />
        <SelectField
          label="Shop"
          none="Nobody yet"
          options={[
            { value: 'lead', label: 'Tarn Lane Coachworks' },
            { value: 'engines', label: 'Bexwater Engines' },
          ]}
          value={shop}
          onChange={setShop}
        />
      </div>
      <div className="sheet stack">
        <TickField
          label="Shared with the other parties"
          hint="Otherwise only your own shop reads it."
          checked={ticked}
          onChange={setTicked}
        />
        <PickList
          label="Which cloth?"
          value={picked}
          onChange={setPicked}
          options={[
            { value: 'black', title: 'Black duck', beside: 'same price' },
            { value: 'fawn', title: 'Fawn duck', beside: '+£40.00', text: 'Two weeks later.' },
          ]}
          wrong="Choose one of the two."
        />
        <FingerSignature path={path} onChange={setPath} />
        <FingerSignature path="" onChange={setPath} />
      </div>
    </>
  )
}
