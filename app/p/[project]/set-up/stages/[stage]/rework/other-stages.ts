'use client'
import { useDesk } from '@/app/_ui/use-desk.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import { all } from '@/lib/record/table.ts'
import { stageNumber } from '@/lib/words/labels.ts'

/** The other stages, by number, to choose from. */
export function useOtherStages(
  stage: Stage,
  suits: (other: Stage) => boolean = () => true,
): readonly { readonly value: string; readonly label: string }[] {
  const { record } = useDesk()
  return all(record.stages)
    .filter((other) => other.id !== stage.id && other.removedAt === null && suits(other))
    .toSorted((a, b) => a.number - b.number)
    .map(({ id, number, name }) => ({ value: id, label: `${stageNumber(number)} · ${name}` }))
}
