import { StageScreen } from './stage-screen.tsx'

export default async function StagePage({
  params,
}: {
  readonly params: Promise<{ readonly stage: string }>
}) {
  const { stage } = await params
  return <StageScreen id={stage} />
}
