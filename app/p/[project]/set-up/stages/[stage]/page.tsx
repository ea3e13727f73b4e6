import { StageSetUp } from './stage-set-up.tsx'

export default async function StageSetUpPage({
  params,
}: {
  readonly params: Promise<{ readonly stage: string }>
}) {
  const { stage } = await params
  return <StageSetUp id={stage} />
}
