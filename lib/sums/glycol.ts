import { choice } from './fields.ts'
import { type Answer, fault, refuse } from './sum.ts'

/**
 * Ethylene glycol in water, row by row: per cent by volume, per cent by mass, freezing point in °C. ASHRAE Fundamentals,
 * secondary coolants, from memory.
 */
const ROWS: readonly {
  readonly volume: number
  readonly mass: number
  readonly freezes: number
}[] = [
  { volume: 0, mass: 0, freezes: 0 },
  { volume: 4.4, mass: 5, freezes: -1.4 },
  { volume: 8.9, mass: 10, freezes: -3.2 },
  { volume: 13.6, mass: 15, freezes: -5.4 },
  { volume: 18.1, mass: 20, freezes: -7.8 },
  { volume: 22.9, mass: 25, freezes: -10.7 },
  { volume: 27.7, mass: 30, freezes: -14.1 },
  { volume: 32.6, mass: 35, freezes: -17.9 },
  { volume: 37.5, mass: 40, freezes: -22.3 },
  { volume: 42.5, mass: 45, freezes: -27.5 },
  { volume: 47.5, mass: 50, freezes: -33.8 },
  { volume: 52.7, mass: 55, freezes: -41.1 },
  { volume: 57.8, mass: 60, freezes: -48.3 },
]
/** Where the table ends. */
const MOST = { volume: 57.8, mass: 60 } as const
/** The coldest it reaches, in °C. */
export const COLDEST = -48.3

type Column = 'volume' | 'mass' | 'freezes'

/** What stands in one column of the table where another holds `value`: straight between two rows. */
export function glycolTable(value: number, from: Column, to: Column): number {
  const after = ROWS.findIndex((row) =>
    from === 'freezes' ? row.freezes <= value : row[from] >= value,
  )
  const b = ROWS[after] ?? ROWS.at(-1)
  const a = ROWS[Math.max(after - 1, 0)] ?? b
  if (a === undefined || b === undefined) throw new Error('The table of glycol is empty.')
  return a === b ? b[to] : a[to] + ((value - a[from]) / (b[from] - a[from])) * (b[to] - a[to])
}

/** Where the table is from. */
export const GLYCOL_SOURCE =
  'ASHRAE Fundamentals, secondary coolants, ethylene glycol: from memory, not read. ASTM D1177 and D3321 for the test (titles from memory).'

/** What stands beside every answer about coolant. */
export const COOLANT_WARNINGS: readonly string[] = [
  'Never water alone in an iron engine without inhibitor, and kinds are never mixed: the data sheet.',
]

/** Which coolant it is. */
export const coolantKind = choice('Coolant', ['ethylene glycol', 'propylene glycol', 'other'], {
  'ethylene glycol': 'Ethylene glycol',
  'propylene glycol': 'Propylene glycol',
  other: 'Something else',
})

/** Refuses a coolant that has another table. */
export const otherCoolant = (which: string): Answer | null =>
  which === 'ethylene glycol'
    ? null
    : refuse(
        fault(
          'kind',
          'Coolant: this table is for ethylene glycol only; the maker of another has its own.',
        ),
      )

/** Refuses more glycol than the table holds. */
export function tooMuchGlycol(
  field: string,
  label: string,
  value: number,
  by: 'volume' | 'mass',
): Answer | null {
  if (value <= MOST[by]) return null
  return refuse(
    fault(
      field,
      value > 60
        ? `${label}: over 60 % more glycol protects less. Mix it thinner.`
        : `${label}: the table ends at ${MOST[by]} % by ${by}. Mix it thinner.`,
    ),
  )
}
