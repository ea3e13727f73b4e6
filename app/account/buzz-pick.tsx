'use client'
import { useSyncExternalStore } from 'react'
import { TickField } from '@/app/_ui/form/text-field.tsx'
import { canBuzz } from '@/app/_ui/phone/buzz.ts'
import { keepPhoneSetting, usePhoneSetting } from '@/app/_ui/phone/phone-setting.ts'

const never = () => () => {}

/** Whether this phone is felt when a press counts. Nothing where there is nothing to feel. */
export function BuzzPick() {
  const can = useSyncExternalStore(never, canBuzz, () => false)
  const on = usePhoneSetting('buzz', true)
  if (!can) return null
  return (
    <TickField
      label="This phone buzzes"
      hint="When a held press counts, a reading lies out of limits, a tag is found. Never where the device asks for less motion."
      checked={on}
      onChange={(next) => keepPhoneSetting('buzz', next)}
    />
  )
}
