import { OrderScreen } from './order-screen.tsx'

export default async function ChangeOrderPage({
  params,
}: {
  readonly params: Promise<{ readonly order: string }>
}) {
  const { order } = await params
  return <OrderScreen id={order} />
}
