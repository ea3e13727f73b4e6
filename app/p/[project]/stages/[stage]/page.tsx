import type { Metadata } from 'next'
import { StageScreen } from './stage-screen.tsx'

export const metadata: Metadata = { title: 'Stage · Fettleyard' }

export default async function StagePage({
  params,
}: {
  readonly params: Promise<{ readonly stage: string }>
}) {
  const { stage } = await params
  return <StageScreen id={stage} />
}
