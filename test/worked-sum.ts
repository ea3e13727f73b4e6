import { type Answer, type Sum, shownFigure } from '../lib/sums/sum.ts'

/** What a sum comes to; throws with its words where it can't be worked. */
export function worked(sum: Sum, input: unknown): Extract<Answer, { outcome: 'result' }> {
  const answer = sum.work(input)
  if (answer.outcome !== 'result') throw new Error(JSON.stringify(answer.faults))
  return answer
}

/** The figures of a result as they are written, by name. */
export const shownBy = (sum: Sum, input: unknown): Readonly<Record<string, string>> =>
  Object.fromEntries(worked(sum, input).figures.map((each) => [each.name, shownFigure(each)]))

/** One figure of a result at full precision. */
export function valueBy(sum: Sum, input: unknown, name: string): number {
  const value = worked(sum, input).figures.find((each) => each.name === name)?.value
  if (typeof value !== 'number') throw new Error(`No figure ${name}.`)
  return value
}

/** The fields for which a sum is refused; empty where it is worked. */
export function refusedFor(sum: Sum, input: unknown): readonly string[] {
  const answer = sum.work(input)
  return answer.outcome === 'refused' ? answer.faults.map(({ field }) => field) : []
}

/** The field that a sum asks about, and the inputs that its answers lead to; null where it asks nothing. */
export function askedAbout(sum: Sum, input: Readonly<Record<string, unknown>>) {
  const answer = sum.work(input)
  const asked = answer.outcome === 'refused' ? answer.faults.find(({ ask }) => ask) : undefined
  if (asked === undefined) return null
  return {
    field: asked.field,
    message: asked.message,
    next: asked.answers.map(({ set }) => ({ ...input, ...set })),
  }
}
