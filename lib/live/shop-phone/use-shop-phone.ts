'use client'
import { useSyncExternalStore } from 'react'
import { NOBODY, type PersonId } from '../../record/ids.ts'
import { noShopPhone, type ShopPhone, shopPhone, subscribeShopPhone } from './shop-phone.ts'

/** The shop's phone that this is, and who works at it now. */
export const useShopPhone = (): ShopPhone =>
  useSyncExternalStore(subscribeShopPhone, shopPhone, noShopPhone)

/** Whether this is a shop's phone: nobody reads it as themselves. */
export function useOnShopPhone(reader: PersonId): boolean {
  const { here } = useShopPhone()
  return reader === NOBODY || here !== null
}
