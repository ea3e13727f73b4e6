/** One figure of a benchmark, a line of `npm run bench`. A name, once published, keeps its meaning. */
export type Figure = {
  readonly name: string
  readonly value: number
  readonly unit: string
  /** The same of what it is measured against, by turns in the same run. */
  readonly baseline?: number
  readonly ratio?: number
  readonly better: 'higher' | 'lower'
}

/** Some figures that are measured together; each file `test/bench/*.bench.ts` exports one as `bench`. */
export type Bench = {
  readonly names: readonly string[]
  /** Measures those of its figures that are wanted. */
  readonly run: (isWanted: (name: string) => boolean) => AsyncIterable<Figure>
}

/** A figure against its baseline. */
export const against = (
  name: string,
  unit: string,
  better: Figure['better'],
  value: number,
  baseline: number,
): Figure => ({
  name,
  value: rounded(value),
  unit,
  baseline: rounded(baseline),
  ratio: rounded(value / baseline),
  better,
})

/** To three digits: no bench knows more. */
export const rounded = (value: number): number => Number(value.toPrecision(3))

/** The middle one. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN
}

/** The value that so much of them stays below: 0.99 for p99. */
export function quantile(values: readonly number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * part))] ?? Number.NaN
}
