import type { Condition } from '../record/condition.ts'

/** A condition that was unmet when work was done outside the gate. */
export interface Reported {
  readonly rule: string
  readonly entity: string
}

/** More than a person reads; the record's field has an end. */
const AT_MOST = 100
const none = '-'

/** Unmet conditions as a stage keeps them: one a line, its rule and what it was about. */
export const writeReported = (conditions: readonly Condition[]): string =>
  conditions.length === 0
    ? none
    : conditions
        .slice(0, AT_MOST)
        .map(({ rule, entity }) => `${rule} ${entity}`)
        .join('\n')

/** The conditions that a stage's `reported` keeps; none where it wasn't reported, or nothing was unmet. */
export const readReported = (reported: string | null): Reported[] =>
  (reported ?? none).split('\n').flatMap((line) => {
    const [rule, entity] = line.split(' ')
    return rule === undefined || entity === undefined ? [] : [{ rule, entity }]
  })
