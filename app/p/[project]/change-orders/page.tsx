import type { Metadata } from 'next'
import { OrderList } from './order-list.tsx'

export const metadata: Metadata = { title: 'Change orders · Fettleyard' }

export default function ChangeOrdersPage() {
  return <OrderList />
}
