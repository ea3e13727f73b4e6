import type { MarkName } from '@/app/_ui/mark.tsx'
import type { Part, PartPromise } from '@/lib/record/entities/things.ts'
import type { ProjectRecord } from '@/lib/record/project-record.ts'
import { all } from '@/lib/record/table.ts'

/** Every promise for a part, in the order in which they were made. */
export const promisesOf = (record: ProjectRecord, part: string): readonly PartPromise[] =>
  all(record.promises)
    .filter((promise) => promise.part === part)
    .toSorted((a, b) => a.madeAt.localeCompare(b.madeAt) || a.id.localeCompare(b.id))

/** How often the day was put off. */
export const slips = (promises: readonly PartPromise[]): number =>
  promises.filter((promise, n) => promise.date > (promises[n - 1]?.date ?? promise.date)).length

/** Ordered, promised for a day that is past, and not here. */
export const isLate = (part: Part, promises: readonly PartPromise[], today: string): boolean =>
  part.state === 'ordered' && (promises.at(-1)?.date ?? today) < today

/** What a part's state looks like, and its word. */
export function partState(part: Part, late: boolean): { mark: MarkName; word: string } {
  if (part.withdrawnAt !== null) return { mark: 'reopened', word: 'Withdrawn' }
  switch (part.state) {
    case 'wanted':
      return { mark: 'waiting', word: 'Wanted, not ordered' }
    case 'ordered':
      return late
        ? { mark: 'refused', word: 'Ordered, late' }
        : { mark: 'waiting', word: 'Ordered' }
    case 'arrived':
      return { mark: 'held', word: 'Here, to be inspected' }
    case 'inspected':
      return { mark: 'met', word: 'Passed' }
    default:
      return { mark: 'refused', word: 'Rejected' }
  }
}
