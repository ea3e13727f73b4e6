import { HandoverScreen } from './handover-screen.tsx'

export default async function HandoverPage({
  params,
}: {
  readonly params: Promise<{ readonly handover: string }>
}) {
  const { handover } = await params
  return <HandoverScreen id={handover} />
}
