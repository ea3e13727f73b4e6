import * as z from 'zod/mini'
import { measure } from './fields.ts'
import { ask, defineSum, type Fault, fault, figure, refuse, result } from './sum.ts'

/** Under this a bore or stroke in mm was probably typed in inches. */
const INCHES_UNDER = 20
const bore = (label: string) => measure(label, 'mm', { above: 0, greatest: 250 })

function inchesMeant(field: string, label: string, mm: number): readonly Fault[] {
  if (mm >= INCHES_UNDER) return []
  const inMm = Number((mm * 25.4).toFixed(6))
  return [
    ask(field, `${label} ${mm} mm is too small: are inches meant? ${mm} in is ${inMm} mm.`, [
      { words: `Yes, ${mm} in`, set: { [field]: inMm } },
    ]),
  ]
}

const cylinderCc = (diameter: number, height: number): number =>
  ((Math.PI / 4) * diameter ** 2 * height) / 1000

/** Swept volume and compression ratio: geometry; ISO 7967 for the terms (from memory). Gasket thickness is as crushed. */
export const compressionRatio = defineSum({
  name: 'compression-ratio',
  title: 'Swept volume and compression ratio',
  group: 'engine',
  formula:
    'swept = π ÷ 4 × bore² × stroke; clearance = chamber + gasket + deck − dome; ratio = (swept + clearance) ÷ clearance',
  source: 'Geometry; ISO 7967 gives the terms (from memory).',
  tolerance: '0.01 cc, 0.01 of the ratio',
  hazards: [],
  input: z.strictObject({
    bore: bore('Bore'),
    stroke: bore('Stroke'),
    cylinders: measure('Cylinders', '', { least: 1, greatest: 16 }),
    chamber: measure('Chamber', 'cc', {
      least: 0,
      greatest: 500,
      help: 'Measured, with the plug in.',
    }),
    gasketBore: bore('Bore of the gasket'),
    gasket: measure('Gasket, crushed', 'mm', {
      least: 0,
      greatest: 10,
      help: 'Its thickness once it is tightened down.',
    }),
    deck: measure('Piston below the deck', 'mm', {
      least: -10,
      greatest: 20,
      help: 'Minus where it stands proud.',
    }),
    dome: measure('Dome of the piston', 'cc', {
      least: -100,
      greatest: 100,
      help: 'A dish is minus.',
    }),
  }),
  reckon({ bore: across, stroke, cylinders, chamber, gasketBore, gasket, deck, dome }) {
    const asked = [
      ...inchesMeant('bore', 'Bore', across),
      ...inchesMeant('stroke', 'Stroke', stroke),
      ...inchesMeant('gasketBore', 'Bore of the gasket', gasketBore),
    ]
    if (asked.length > 0) return refuse(...asked)
    if (!Number.isInteger(cylinders))
      return refuse(fault('cylinders', `Cylinders: counted whole; ${cylinders} is not.`))
    const swept = cylinderCc(across, stroke)
    const gasketCc = cylinderCc(gasketBore, gasket)
    const deckCc = cylinderCc(across, deck)
    const clearance = chamber + gasketCc + deckCc - dome
    if (clearance <= 0)
      return refuse(
        fault('dome', 'Dome of the piston: nothing would be left above it. Is its sign right?'),
      )
    const ratio = (swept + clearance) / clearance
    return result(
      [
        figure('ratio', 'Compression ratio', ratio, ':1'),
        figure('swept', 'Swept, each', swept, 'cc'),
        figure('engine', 'Swept, all', swept * cylinders, 'cc', 1),
        figure('clearance', 'Clearance', clearance, 'cc'),
      ],
      {
        working: [
          `π ÷ 4 × ${across}² × ${stroke} ÷ 1000 = ${swept.toFixed(2)} cc`,
          `${chamber} + ${gasketCc.toFixed(2)} (gasket) + ${deckCc.toFixed(2)} (deck) − ${dome} = ${clearance.toFixed(2)} cc`,
          `(${swept.toFixed(2)} + ${clearance.toFixed(2)}) ÷ ${clearance.toFixed(2)} = ${ratio.toFixed(3)}`,
        ],
        warnings: [
          ...(ratio < 5 || ratio > 16
            ? ['A ratio outside 5 to 16: look at the figures again.']
            : []),
          ...(gasketBore < across
            ? ['The gasket’s bore is smaller than the cylinder’s: it would stand into it.']
            : []),
        ],
      },
    )
  },
})
