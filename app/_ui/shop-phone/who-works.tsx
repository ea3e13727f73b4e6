'use client'
import { Mark } from '@/app/_ui/mark.tsx'
import { askWho } from '@/lib/live/shop-phone/shop-phone.ts'
import { useShopPhone } from '@/lib/live/shop-phone/use-shop-phone.ts'

/** On the plate of a shop's phone: its name, and who works at it now. A tap asks who it is instead. */
export function WhoWorks() {
  const { here, hand } = useShopPhone()
  const name = here?.hands.find(({ person }) => person === hand)?.name
  return (
    <button type="button" className="who-works" onClick={() => void askWho()}>
      <Mark name="device" />
      <span>
        <span className="small">{here?.name ?? 'The shop’s phone'}</span>
        <b>{name ?? 'Who works here?'}</b>
      </span>
    </button>
  )
}
