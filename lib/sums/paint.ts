import { Big } from 'big.js'
import * as z from 'zod/mini'
import { Decimal } from './decimal.ts'
import { choice, measure } from './fields.ts'
import { ask, asTyped, defineSum, type Fault, fault, figure, refuse, result } from './sum.ts'

const density = (label: string) =>
  measure(label, 'g/mL', {
    least: 0.5,
    greatest: 2500,
    help: 'From the data sheet, from 0.5 to 2.5.',
  })

/** A density that is none in g/mL: one in kg/m³ is asked about. */
function oddDensity(field: string, label: string, value: number): Fault[] {
  if (value <= 2.5) return []
  if (value < 500) return [fault(field, `${label}: from 0.5 to 2.5 g/mL. Check the unit.`)]
  const right = new Decimal(value).div(1000).toNumber()
  return [
    ask(field, `${label} ${value}: is it in kg/m³?`, [
      { words: `${value} kg/m³, which is ${right} g/mL`, set: { [field]: right } },
    ]),
  ]
}

/** Mixing by volume ratio, weighed out: m = ρV. How density is measured: ISO 2811-1 (title from memory). */
export const volumeRatio = defineSum({
  name: 'volume-ratio',
  title: 'A ratio by volume, weighed out',
  group: 'paint',
  formula:
    't = percent ÷ 100 × (A + B), or × A; u = V ÷ (A + B + t); volumes u·A, u·B, u·t; grams = mL × density',
  source:
    'm = ρV; ISO 2811-1 for how density is measured (title from memory). The ratio is the data sheet’s.',
  tolerance: '0.1 mL',
  hazards: ['isocyanate', 'solvent'],
  input: z.strictObject({
    ratioBy: choice('The sheet gives the ratio', ['volume', 'weight'], {
      volume: 'by volume',
      weight: 'by weight',
    }),
    partsA: measure('Parts of paint', '', { above: 0, greatest: 100 }),
    partsB: measure('Parts of hardener', '', { above: 0, greatest: 100 }),
    thinner: measure('Thinner', '%', { least: 0, greatest: 100 }),
    basis: choice(
      'Per cent of',
      ['paint', 'paint and hardener'],
      { paint: 'the paint', 'paint and hardener': 'paint and hardener together' },
      'The data sheet says which; the two differ by some 3 %.',
    ),
    volume: measure('Ready mix wanted', 'mL', { above: 0, greatest: 100_000 }),
    densityA: density('Density of the paint'),
    densityB: density('Density of the hardener'),
    densityThinner: z.optional(density('Density of the thinner')),
  }),
  reckon(input) {
    const { partsA, partsB, thinner, volume } = input
    if (input.ratioBy === 'weight')
      return refuse(
        fault(
          'ratioBy',
          'A ratio by weight is weighed as it stands: use the mix by its grams, not this sum.',
        ),
      )
    const { densityA, densityB, densityThinner } = input
    const odd = [
      ...oddDensity('densityA', 'Density of the paint', densityA),
      ...oddDensity('densityB', 'Density of the hardener', densityB),
      ...oddDensity('densityThinner', 'Density of the thinner', densityThinner ?? 1),
      ...(thinner > 0 && densityThinner === undefined
        ? [fault('densityThinner', 'Density of the thinner: missing. A blank is not zero.')]
        : []),
    ]
    if (odd.length > 0) return refuse(...odd)
    const t = (thinner / 100) * (input.basis === 'paint' ? partsA : partsA + partsB)
    const u = volume / (partsA + partsB + t)
    const [a, b, c] = [u * partsA, u * partsB, u * t]
    const grams = [a * densityA, b * densityB, c * (densityThinner ?? 0)] as const
    return result(
      [
        figure('paint mL', 'Paint', a, 'mL', 1),
        figure('paint g', 'Paint', grams[0], 'g', 1),
        figure('hardener mL', 'Hardener', b, 'mL', 1),
        figure('hardener g', 'Hardener', grams[1], 'g', 1),
        figure('thinner mL', 'Thinner', c, 'mL', 1),
        figure('thinner g', 'Thinner', grams[2], 'g', 1),
        figure('total g', 'On the scale at the end', grams[0] + grams[1] + grams[2], 'g', 1),
      ],
      {
        working: [
          `t = ${thinner} ÷ 100 × ${input.basis === 'paint' ? partsA : `(${partsA} + ${partsB})`} = ${t.toFixed(4)} parts`,
          `u = ${volume} ÷ (${partsA} + ${partsB} + ${t.toFixed(4)}) = ${u.toFixed(3)} mL a part`,
        ],
      },
    )
  },
})

const solids = (label: string) =>
  measure(label, '%', { above: 0, greatest: 100, help: 'Volume solids, from the data sheet.' })

/** Volume solids of a mix as it is sprayed: ISO 3233-1 and ISO 23811 for how they are measured (titles from memory). */
export const mixedSolids = defineSum({
  name: 'mixed-solids',
  title: 'Volume solids of the mix as sprayed',
  group: 'paint',
  formula: 'VS = (A × VS of A + B × VS of B) ÷ (A + B + thinner), in parts by volume',
  source: 'A mean by volume. ISO 3233-1 and ISO 23811 for volume solids (titles from memory).',
  tolerance: '0.01 %',
  hazards: [],
  input: z.strictObject({
    partsA: measure('Parts of paint', '', { above: 0, greatest: 100 }),
    partsB: measure('Parts of hardener', '', { least: 0, greatest: 100 }),
    partsThinner: measure('Parts of thinner', '', { least: 0, greatest: 100 }),
    solidsA: solids('Solids of the paint'),
    solidsB: solids('Solids of the hardener'),
  }),
  reckon({ partsA, partsB, partsThinner, solidsA, solidsB }) {
    const whole = partsA + partsB + partsThinner
    const value = (partsA * solidsA + partsB * solidsB) / whole
    return result([figure('solids', 'Solids of the mix', value, '%')], {
      working: [
        `(${partsA} × ${solidsA} + ${partsB} × ${solidsB}) ÷ ${whole} = ${value.toFixed(2)} %`,
      ],
    })
  },
})

/**
 * Litres for an area: rate = 10 × VS ÷ DFT m²/L, as printed in published coating tables and technical notes (read). Transfer efficiencies:
 * from memory, common practice.
 */
export const paintQuantity = defineSum({
  name: 'paint-quantity',
  title: 'Paint for an area',
  group: 'paint',
  formula:
    'rate = 10 × VS % ÷ dry film µm (m²/L); litres = area × coats ÷ rate ÷ transfer × (1 + waste)',
  source:
    'Spreading rate as printed in published coating tables and technical notes (read); ISO 23811 and ISO 3233-1 for volume solids (titles from memory).',
  tolerance: '0.05 m²/L',
  hazards: ['isocyanate', 'solvent'],
  input: z.strictObject({
    area: measure('Area', 'm²', { above: 0, greatest: 1000 }),
    coats: measure('Coats', '', { least: 1, greatest: 50 }),
    dryFilm: measure('Dry film of each coat', 'µm', { least: 1, greatest: 3000 }),
    solids: solids('Volume solids as sprayed'),
    transfer: measure('Transfer efficiency', '%', {
      above: 0,
      greatest: 100,
      help: 'What lands on the panel: about 30 to 45 from a conventional gun, 65 and more from high volume, low pressure. Common practice.',
    }),
    waste: measure('Left in pot and lines', '%', { least: 0, greatest: 100 }),
    tin: z.optional(measure('Size of the tin', 'L', { above: 0, greatest: 1000 })),
  }),
  reckon({ area, coats, dryFilm, solids: vs, transfer, waste, tin }, meant) {
    if (!Number.isInteger(coats))
      return refuse(
        fault('coats', `Coats: ${coats} is no whole number. A mist coat counts as one.`),
      )
    if (transfer <= 1 && !meant('transfer'))
      return refuse(askShare('transfer', 'Transfer efficiency', transfer))
    if (vs <= 1 && !meant('solids')) return refuse(askShare('solids', 'Volume solids', vs))
    const rate = (10 * vs) / dryFilm
    // In decimals: what is exactly enough must not ask for one tin more.
    const exact = new Decimal(area)
      .times(coats)
      .times(dryFilm)
      .times(new Decimal(waste).plus(100))
      .div(new Decimal(vs).times(transfer).times(10))
    const litres = exact.toNumber()
    return result(
      [
        figure('rate', 'Spreading rate', rate, 'm²/L'),
        figure('litres', 'Needed', litres, 'L'),
        ...(tin === undefined
          ? []
          : [
              figure(
                'tins',
                'Tins to order',
                exact.div(tin).round(0, Big.roundUp).toNumber(),
                '',
                0,
              ),
            ]),
      ],
      {
        working: [
          `10 × ${vs} ÷ ${dryFilm} = ${rate.toFixed(2)} m²/L`,
          `${area} × ${coats} ÷ ${rate.toFixed(2)} ÷ ${transfer / 100} × ${1 + waste / 100} = ${litres.toFixed(2)} L`,
        ],
        warnings: ['Rounded up to tins only as you order.'],
      },
    )
  },
})

/** Asks whether a share of 0.65 is 65 %. */
function askShare(field: string, label: string, typed: number): Fault {
  const percent = new Decimal(typed).times(100).toNumber()
  return ask(field, `${label} ${typed}: is ${typed} % meant, or ${percent} %?`, [
    { words: `${percent} %`, set: { [field]: percent } },
    asTyped(field, `${typed} %`),
  ])
}

/** Wet film for a dry one and back: published technical notes (read); ISO 2808 for the wet-film comb (title from memory). */
export const wetFilm = defineSum({
  name: 'wet-film',
  title: 'Wet film and dry film',
  group: 'paint',
  formula: 'wet = dry × (100 + thinner %) ÷ VS %; dry = wet × VS % ÷ (100 + thinner %)',
  source:
    'Published technical notes (read); ISO 2808 for how a wet film is measured (title from memory).',
  tolerance: '0.5 µm',
  hazards: ['solvent'],
  input: z.strictObject({
    dry: z.optional(measure('Dry film wanted', 'µm', { above: 0, greatest: 3000 })),
    wet: z.optional(measure('Wet film read', 'µm', { above: 0, greatest: 6000 })),
    solids: measure('Volume solids, unthinned', '%', { above: 0, greatest: 100 }),
    thinner: measure('Thinned by volume of the paint', '%', {
      least: 0,
      greatest: 100,
      help: '0 where the solids are those of the mix as sprayed.',
    }),
  }),
  reckon({ dry, wet, solids: vs, thinner }) {
    if (dry === undefined && wet === undefined)
      return refuse(fault('dry', 'Give the dry film wanted, or the wet film read.'))
    if (dry !== undefined && wet !== undefined)
      return refuse(
        ask('wet', 'Both films are given: which one is to be reckoned?', [
          { words: 'The wet film', set: { wet: undefined } },
          { words: 'The dry film', set: { dry: undefined } },
        ]),
      )
    const share = (100 + thinner) / vs
    return dry !== undefined
      ? result([figure('wet', 'Wet film', dry * share, 'µm', 1)], {
          working: [`${dry} × (100 + ${thinner}) ÷ ${vs} = ${(dry * share).toFixed(1)} µm`],
        })
      : result([figure('dry', 'Dry film', (wet ?? 0) / share, 'µm', 1)], {
          working: [`${wet} × ${vs} ÷ (100 + ${thinner}) = ${((wet ?? 0) / share).toFixed(1)} µm`],
        })
  },
})
