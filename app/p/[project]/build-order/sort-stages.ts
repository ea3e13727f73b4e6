import type { LaidOut } from '@/lib/plan/laid-out.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import type { ShownState } from '@/lib/words/labels.ts'

/** The columns of the list that can put it in order. */
export type Column = 'number' | 'name' | 'shop' | 'state' | 'from' | 'to' | 'float'

export interface Order {
  readonly column: Column
  readonly down: boolean
}

/** What a column reads of a stage. */
export interface Reads {
  readonly laidOut: LaidOut
  readonly stateOf: (stage: Stage) => ShownState
  readonly shopOf: (stage: Stage) => string
}

/** Stages by a column; equal ones by number. Null leaves them as they are. */
export function sortStages(
  stages: readonly Stage[],
  order: Order | null,
  reads: Reads,
): readonly Stage[] {
  if (order === null) return stages
  const { column, down } = order
  const sign = down ? -1 : 1
  return stages.toSorted(
    (a, b) => sign * compare(key(a, column, reads), key(b, column, reads)) || a.number - b.number,
  )
}

function key(stage: Stage, column: Column, { laidOut, stateOf, shopOf }: Reads): string | number {
  const laid = laidOut.stages.get(stage.id)
  switch (column) {
    case 'number':
      return stage.number
    case 'name':
      return stage.name
    case 'shop':
      return shopOf(stage)
    case 'state':
      return stateOf(stage)
    case 'from':
      return laid?.from ?? ''
    case 'to':
      return laid?.to ?? ''
    case 'float':
      // What is over slips no more: it comes behind all that may.
      return laid?.floatDays ?? Number.MAX_VALUE
  }
}

const compare = (a: string | number, b: string | number): number =>
  typeof a === 'number' && typeof b === 'number' ? a - b : String(a).localeCompare(String(b))
