import type { Metadata } from 'next'
import { OrderForm } from '../order-form.tsx'

export const metadata: Metadata = { title: 'A change order · Fettleyard' }

export default function NewChangeOrderPage() {
  return <OrderForm order={null} />
}
