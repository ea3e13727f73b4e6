'use client'
import { useMemo } from 'react'
import { stageStatus } from '@/lib/gate/status.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { LaidOut } from '@/lib/plan/laid-out.ts'
import { layOut } from '@/lib/plan/lay-out.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import type { ShownState } from '@/lib/words/labels.ts'

/** The build order along the days as it stands now, and how each stage stands. */
export function useLaidOut(): {
  readonly laidOut: LaidOut
  readonly stateOf: (stage: Stage) => ShownState
} {
  const { record, reader, shops } = useProject()
  const { now } = reader
  return useMemo(
    () => ({
      laidOut: layOut(record, shops, now),
      stateOf: (stage) => stageStatus(record, stage, now),
    }),
    [record, shops, now],
  )
}
