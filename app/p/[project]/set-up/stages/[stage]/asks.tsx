'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { TextField, TickField } from '@/app/_ui/form/text-field.tsx'
import { TickSet } from '@/app/_ui/form/tick-set.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { Head } from '@/app/_ui/paper.tsx'
import { DatedThing } from '@/lib/record/entities/standing.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import { atStart } from '@/lib/words/names.ts'
import { readQuantity } from '@/lib/words/read-amount.ts'

const LIMITS = {
  airAgeMost: 'Not older than, minutes',
  dewMarginLeast: 'Over the dew point by at least, °C',
  humidityMost: 'Humidity at most, %',
  surfaceLeast: 'Surface from, °C',
  surfaceMost: 'Surface to, °C',
} as const
type Limit = keyof typeof LIMITS
const limits: readonly Limit[] = [
  'airAgeMost',
  'dewMarginLeast',
  'humidityMost',
  'surfaceLeast',
  'surfaceMost',
]
/** Where the sheet says nothing else: thirty minutes common practice, 85 % usual on data sheets. */
const USUAL = {
  airAgeMost: '30',
  dewMarginLeast: '3',
  humidityMost: '85',
  surfaceLeast: '',
  surfaceMost: '',
}

const typedOf = (stage: Stage): { readonly [L in Limit]: string } =>
  stage.airAgeMost === null
    ? USUAL
    : {
        airAgeMost: String(stage.airAgeMost),
        dewMarginLeast: String(stage.dewMarginLeast ?? ''),
        humidityMost: String(stage.humidityMost ?? ''),
        surfaceLeast: String(stage.surfaceLeast ?? ''),
        surfaceMost: String(stage.surfaceMost ?? ''),
      }

/** What a start asks for besides stages, parts, custody and precautions: air and surface, what must be in date. */
export function Asks({ stage }: { readonly stage: Stage }) {
  const press = usePress('stage.describe', 'Saved.', { stage: stage.id, asks: true })
  const [dated, setDated] = useState<readonly string[]>(stage.inDate)
  const [asksAir, setAsksAir] = useState(stage.airAgeMost !== null)
  const [typed, setTyped] = useState(() => typedOf(stage))
  const read = (limit: Limit) => (typed[limit].trim() === '' ? null : readQuantity(typed[limit]))
  const isWrong = (limit: Limit) => typed[limit].trim() !== '' && read(limit) === null
  return (
    <section className="sheet stack">
      <Head title="What its start asks" />
      <form
        className="stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault()
          if (asksAir && (limits.some(isWrong) || read('airAgeMost') === null)) return
          const air = Object.fromEntries(
            limits.map((limit) => [limit, asksAir ? read(limit) : null]),
          )
          void press.send({ stage: stage.id, inDate: [...dated], ...air })
        }}
      >
        <TickSet
          label="In date must be"
          choices={DatedThing.options.map((value) => ({ value, label: atStart(value) }))}
          picked={dated}
          onChange={setDated}
        />
        <TickField
          label="Air and surface are read before it"
          hint="For coating: the data sheet’s own limits replace the usual ones."
          checked={asksAir}
          onChange={setAsksAir}
        />
        {asksAir &&
          limits.map((limit) => (
            <TextField
              key={limit}
              label={LIMITS[limit]}
              inputMode="decimal"
              value={typed[limit]}
              onChange={(value) => setTyped({ ...typed, [limit]: value })}
              wrong={
                isWrong(limit)
                  ? 'A number such as 85.'
                  : limit === 'airAgeMost' && read(limit) === null
                    ? 'Say how old it may be.'
                    : press.wrong(limit)
              }
            />
          ))}
        <PressFoot press={press} lined label="Save what it asks" />
      </form>
    </section>
  )
}
