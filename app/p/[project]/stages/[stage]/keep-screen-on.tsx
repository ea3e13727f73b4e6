'use client'
import { TickField } from '@/app/_ui/form/text-field.tsx'
import { useThumb } from '@/app/_ui/form/use-thumb.ts'
import { keepPhoneSetting, usePhoneSetting } from '@/app/_ui/phone/phone-setting.ts'
import { useCanKeepOn, useScreenOn } from '@/app/_ui/phone/use-screen-on.ts'

const says = {
  off: 'Otherwise it goes dark between two readings, as always.',
  on: 'It stays on while this stage is in sight.',
  'let go': 'The phone let go of it, as it does on a low battery. Tick it anew when it may.',
} as const

/** During a bench procedure: the screen stays on, if its keeper wants so. Nothing where the device offers none. */
export function KeepScreenOn() {
  const thumb = useThumb()
  const offered = useCanKeepOn()
  // A desk's screen is its keeper's business.
  const can = offered && thumb
  const wanted = usePhoneSetting('screen-on', false)
  const state = useScreenOn(can && wanted)
  if (!can) return null
  return (
    <div className="no-print" role="status">
      <TickField
        label="Keep the screen on"
        hint={says[state]}
        checked={wanted}
        onChange={(on) => keepPhoneSetting('screen-on', on)}
      />
    </div>
  )
}
