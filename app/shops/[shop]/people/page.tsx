import type { Metadata } from 'next'
import { ShopPeople } from './shop-people.tsx'

export const metadata: Metadata = { title: 'People of the shop · Fettleyard' }

export default function ShopPeoplePage() {
  return <ShopPeople />
}
