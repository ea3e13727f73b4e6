import { DecisionScreen } from './decision-screen.tsx'

export default async function DecisionPage({
  params,
}: {
  readonly params: Promise<{ readonly decision: string }>
}) {
  const { decision } = await params
  return <DecisionScreen id={decision} />
}
