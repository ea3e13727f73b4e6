'use client'
import { lazy, Suspense, useEffect } from 'react'
import { useConnection } from '@/lib/live/live-provider.tsx'
import { refreshShopPhone } from '@/lib/live/shop-phone/refresh-shop-phone.ts'
import {
  learnShopPhone,
  recallShopPhone,
  shopPhone,
  tireShopPhone,
  touchShopPhone,
} from '@/lib/live/shop-phone/shop-phone.ts'
import { useShopPhone } from '@/lib/live/shop-phone/use-shop-phone.ts'

const loadWho = () => import('./who-sheet.tsx')
const loadCode = () => import('./code-sheet.tsx')
/** Only a shop's phone asks: nobody's own phone loads them. */
const WhoSheet = lazy(async () => ({ default: (await loadWho()).WhoSheet }))
const CodeSheet = lazy(async () => ({ default: (await loadCode()).CodeSheet }))

/** How often it is looked whether the phone lies untouched, in ms. */
const LOOK_MS = 15_000

/**
 * Keeps what a shop's phone knows of itself, and asks its hands what a press needs. `on`: the page
 * came to a shop's phone; null where the page can't tell, and what was kept on this phone does.
 */
export function ShopPhoneDesk({ on: told }: { readonly on: boolean | null }) {
  const { here, hand, asking } = useShopPhone()
  const { link } = useConnection()

  const on = told ?? here !== null
  useEffect(() => {
    if (told !== false) recallShopPhone()
    // Somebody has signed in as themselves since.
    else if (shopPhone().here !== null) learnShopPhone(null)
  }, [told])
  useEffect(() => {
    if (on && link !== 'away') void refreshShopPhone()
  }, [on, link])
  useEffect(() => {
    // Before a press asks, and before the signal goes.
    if (on) void Promise.all([loadWho(), loadCode()]).catch(() => undefined)
  }, [on])
  useEffect(() => {
    if (!on) return
    const touch = () => touchShopPhone()
    const look = setInterval(() => tireShopPhone(), LOOK_MS)
    addEventListener('pointerdown', touch, { capture: true })
    addEventListener('keydown', touch, { capture: true })
    return () => {
      clearInterval(look)
      removeEventListener('pointerdown', touch, { capture: true })
      removeEventListener('keydown', touch, { capture: true })
    }
  }, [on])

  if (asking === null) return null
  const signs =
    asking.is === 'code' ? here?.hands.find(({ person }) => person === asking.person) : undefined
  return (
    <Suspense fallback={null}>
      {asking.is === 'who' && <WhoSheet here={here} hand={hand} onAnswer={asking.answer} />}
      {asking.is === 'code' && signs !== undefined && (
        <CodeSheet
          key={`${asking.command} ${asking.wrong}`}
          hand={signs}
          command={asking.command}
          wrong={asking.wrong}
          onAnswer={asking.answer}
        />
      )}
    </Suspense>
  )
}
