import type { Metadata } from 'next'
import { ShopSetUp } from './shop-set-up.tsx'

export const metadata: Metadata = { title: 'Shop set-up · Fettleyard' }

export default function ShopSetUpPage() {
  return <ShopSetUp />
}
