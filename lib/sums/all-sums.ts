import type { Sum } from './sum.ts'
import { wetFilm } from './wet-film.ts'

/** Every sum of the bench, by group as the shop works: paint first. A new sum is its file and a line here. */
export const ALL_SUMS: readonly Sum[] = [wetFilm]

/** The sum of that name, or null. */
export const sumNamed = (name: string): Sum | null =>
  ALL_SUMS.find((sum) => sum.name === name) ?? null
