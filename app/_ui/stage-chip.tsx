'use client'
import { stageStatus } from '@/lib/gate/status.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import { StateMark } from './state-mark.tsx'
import { useDesk } from './use-desk.ts'

/** A stage's state now, as the gate has it. */
export function StageChip({ stage }: { readonly stage: Stage }) {
  const { record, reader } = useDesk()
  return <StateMark state={stageStatus(record, stage, reader.now)} />
}
