import * as z from 'zod/mini'
import { choice, measure } from './fields.ts'
import { type Answer, ask, defineSum, fault, figure, refuse, result } from './sum.ts'

/** Per cent by volume and freezing point in °C of ethylene glycol in water: ASHRAE Fundamentals, secondary coolants, from memory. */
export const FREEZES: readonly (readonly [percent: number, celsius: number])[] = [
  [0, 0],
  [4.4, -1.4],
  [8.9, -3.2],
  [13.6, -5.4],
  [18.1, -7.8],
  [22.9, -10.7],
  [27.7, -14.1],
  [32.6, -17.9],
  [37.5, -22.3],
  [42.5, -27.5],
  [47.5, -33.8],
  [52.7, -41.1],
  [57.8, -48.3],
]
const MOST = 57.8
const SOURCE =
  'ASHRAE Fundamentals, secondary coolants, ethylene glycol: from memory, not read. ASTM D1177 and D3321 for the test (titles from memory).'
const kind = choice('Coolant', ['ethylene glycol', 'propylene glycol', 'other'], {
  'ethylene glycol': 'Ethylene glycol',
  'propylene glycol': 'Propylene glycol',
  other: 'Something else',
})
const WARN =
  'Never water alone in an iron engine without inhibitor, and kinds are never mixed: the data sheet. Glycol is poisonous and sweet: spills up, cans shut, animals away.'

const otherTable = (which: string): Answer | null =>
  which === 'ethylene glycol'
    ? null
    : refuse(
        fault('kind', 'Coolant: this table is for ethylene glycol only; another needs its own.'),
      )

function along(value: number, from: 0 | 1): number {
  const to = from === 0 ? 1 : 0
  const after = FREEZES.findIndex((row) => (from === 0 ? row[0] >= value : row[1] <= value))
  const b = FREEZES[after] ?? [0, 0]
  const a = FREEZES[Math.max(after - 1, 0)] ?? b
  return a[from] === b[from]
    ? b[to]
    : a[to] + ((value - a[from]) / (b[from] - a[from])) * (b[to] - a[to])
}

const percent = (label: string) => measure(label, '%', { least: 0, greatest: 100 })
const tooMuch = (field: string, label: string, value: number): Answer | null =>
  value <= MOST
    ? null
    : refuse(
        fault(
          field,
          value > 60
            ? `${label}: over 60 % more glycol protects less.`
            : `${label}: the table ends at ${MOST} %.`,
        ),
      )

/** Freezing point of a mixture, or the mixture for a freezing point. */
export const coolantFreeze = defineSum({
  name: 'coolant-freeze',
  title: 'Freezing point of coolant',
  group: 'engine',
  formula: 'straight between the rows of the table',
  source: SOURCE,
  tolerance: '3 °C: round the protection up, to the warmer side.',
  hazards: ['coolant'],
  input: z.strictObject({
    kind,
    by: choice('Per cent', ['by volume', 'by mass'], {
      'by volume': 'by volume',
      'by mass': 'by mass',
    }),
    percent: z.optional(percent('Glycol')),
    celsius: z.optional(measure('Must stand', '°C', { least: -48.3, greatest: 0 })),
  }),
  reckon({ kind: which, by, percent: share, celsius }) {
    const other = otherTable(which)
    if (other !== null) return other
    if (by === 'by mass')
      return refuse(
        fault(
          'by',
          'Per cent: the table is by volume. A refractometer’s glycol scale must say the same.',
        ),
      )
    if (share === undefined && celsius === undefined)
      return refuse(fault('percent', 'Glycol: missing. Give the share, or the cold it must stand.'))
    if (share !== undefined && celsius !== undefined)
      return refuse(
        ask('celsius', 'Both are given: which is to be reckoned? Leave that one empty.'),
      )
    if (share !== undefined) {
      const most = tooMuch('percent', 'Glycol', share)
      return (
        most ??
        result([figure('freezes', 'Freezes at', along(share, 0), '°C', 1)], { warnings: [WARN] })
      )
    }
    return result(
      [figure('percent', 'Glycol, at least', along(celsius ?? 0, 1), '% by volume', 1)],
      { warnings: [WARN] },
    )
  },
})

/** How much to drain and replace: x = V·(q − p) ÷ (c − p). */
export const coolantTopUp = defineSum({
  name: 'coolant-top-up',
  title: 'Coolant: drain and replace',
  group: 'engine',
  formula: 'x = system × (wanted − there) ÷ (added − there)',
  source: 'Arithmetic of mixtures.',
  tolerance: '0.01 L',
  hazards: ['coolant'],
  input: z.strictObject({
    kind,
    system: measure('System', 'L', { above: 0, greatest: 100 }),
    there: percent('There is'),
    wanted: percent('Wanted'),
    added: measure('Glycol in what is added', '%', {
      above: 0,
      greatest: 100,
      help: '100 for neat.',
    }),
  }),
  reckon({ kind: which, system, there, wanted, added }) {
    const other = otherTable(which) ?? tooMuch('wanted', 'Wanted', wanted)
    if (other !== null) return other
    if (wanted <= there)
      return refuse(fault('wanted', 'Wanted: not more than there is; nothing to add.'))
    if (added <= wanted)
      return refuse(fault('added', 'Glycol in what is added: it must hold more than is wanted.'))
    const litres = (system * (wanted - there)) / (added - there)
    return result([figure('litres', 'Drain, and add', litres, 'L')], {
      working: [
        `${system} × (${wanted} − ${there}) ÷ (${added} − ${there}) = ${litres.toFixed(2)} L`,
      ],
      warnings: [WARN],
    })
  },
})
