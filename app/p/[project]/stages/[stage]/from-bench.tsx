'use client'
import { type ComponentProps, type ComponentType, useEffect, useState } from 'react'
import { carriedTo, type WorkedSum } from '@/app/sums/carried.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import type { BenchSheet } from './bench-sheet.tsx'

interface Carried {
  readonly sum: WorkedSum
  readonly Sheet: ComponentType<ComponentProps<typeof BenchSheet>>
}

/** What was worked on the bench for this stage; its code comes only where something was. */
export function FromBench({ stage }: { readonly stage: Stage }) {
  const [carried, setCarried] = useState<Carried | null>(null)
  useEffect(() => {
    const sum = carriedTo(stage.id)
    if (sum === null) return
    let stays = true
    void import('./bench-sheet.tsx').then(
      ({ BenchSheet: Sheet }) => stays && setCarried({ sum, Sheet }),
    )
    return () => {
      stays = false
    }
  }, [stage.id])
  if (carried === null) return null
  const { sum, Sheet } = carried
  return <Sheet stage={stage} sum={sum} onDone={() => setCarried(null)} />
}
