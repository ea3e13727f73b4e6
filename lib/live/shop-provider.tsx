'use client'
import { useQuery } from '@tanstack/react-query'
import { createContext, type ReactNode, use, useEffect, useMemo } from 'react'
import type { ShopView } from '../command/wire.ts'
import type { Place } from '../words/reader.ts'
import { useLive, useLocale, useNow } from './live-provider.tsx'
import { useOutboxView } from './outbox/use-outbox.ts'
import { shopKey } from './record-keys.ts'
import { readerOn } from './shop-phone/shop-phone.ts'
import { useShopPhone } from './shop-phone/use-shop-phone.ts'
import { type ShopState, shopStateOf } from './shop-state.ts'

/** A shop book on a screen, and where its dates are read. */
export interface ShopHere extends ShopState {
  readonly place: Place
}

const ShopContext = createContext<ShopHere | null>(null)

/** Holds a shop book for the screens in it, as `ProjectProvider` does a project. */
export function ShopProvider({
  initial,
  gone,
  children,
}: {
  readonly initial: ShopView
  readonly gone: ReactNode
  readonly children: ReactNode
}) {
  const live = useLive()
  const locale = useLocale()
  const now = useNow()
  const { data: state } = useQuery<ShopState | null>({
    queryKey: shopKey(initial.record),
    queryFn: () => shopStateOf(initial),
    initialData: () => shopStateOf(initial),
  })
  useEffect(() => live.seedShop(initial), [live, initial])
  useEffect(() => live.watch(initial.record), [live, initial.record])
  const { shop: overlaid } = useOutboxView()
  const phone = useShopPhone()
  const here = useMemo<ShopHere | null>(() => {
    if (state === null) return null
    const timeZone = state.book.shops.rows.get(state.book.id)?.timeZone ?? 'UTC'
    const read = overlaid(state).state
    return { ...read, person: readerOn(phone, read.person), place: { locale, timeZone, now } }
  }, [state, overlaid, phone, locale, now])
  if (here === null) return gone
  return <ShopContext value={here}>{children}</ShopContext>
}

/** The shop that this screen is in. */
export function useShop(): ShopHere {
  const here = use(ShopContext)
  if (here === null) throw new Error('A screen stands outside ShopProvider.')
  return here
}

/** The shop that this screen is in, if it is in one. */
export const useShopIfAny = (): ShopHere | null => use(ShopContext)
