import * as z from 'zod/mini'
import { choice, measure } from './fields.ts'
import { type Answer, ask, defineSum, fault, figure, refuse, result } from './sum.ts'
import { convert } from './units.ts'

const unit = choice('In', ['in', 'mm'], { in: 'inches', mm: 'millimetres' })
/** Beyond this times the rule a gap is wide; under the rule it is held. */
const WIDE = 1.5
const SOURCE =
  'Common practice; a trade magazine’s worked figures of January 2019 (read). The maker’s figure always replaces the rule.'

function clearance(
  field: string,
  label: string,
  value: number,
  of: 'in' | 'mm',
  limits: readonly [number, number],
  factor: number,
  read: number | undefined,
): Answer {
  const inches = convert(value, of, 'in')
  if (inches > limits[1] && of === 'in')
    return refuse(ask(field, `${label} ${value} in: are millimetres meant?`))
  if (inches < limits[0] || inches > limits[1])
    return refuse(
      fault(field, `${label}: ${limits[0]} to ${limits[1]} in; this is ${inches.toFixed(3)} in.`),
    )
  const gap = inches * factor
  const figures = [
    figure('in', 'By the rule', gap, 'in', 4),
    figure('mm', 'By the rule', convert(gap, 'in', 'mm'), 'mm', 3),
  ]
  const working = [`${inches.toFixed(3)} in × ${factor} = ${gap.toFixed(4)} in`]
  if (read === undefined) return result(figures, { working })
  const measured = convert(read, of, 'in')
  return result(figures, {
    working,
    verdict:
      measured < gap
        ? { passes: false, words: 'Under the rule: too tight seizes. Hold it.' }
        : {
            passes: true,
            words: measured > gap * WIDE ? 'Not tight, but over 1.5 times the rule' : 'By the rule',
          },
  })
}

/** Ring gap by the bore. */
export const ringGap = defineSum({
  name: 'ring-gap',
  title: 'Piston ring gap',
  group: 'engine',
  formula: 'gap = bore × factor',
  source: SOURCE,
  tolerance: '0.0005 in',
  hazards: [],
  input: z.strictObject({
    unit,
    bore: measure('Bore', '', { above: 0, greatest: 300 }),
    factor: measure('Factor', '', {
      least: 0.002,
      greatest: 0.01,
      help: '0.004 for a road engine; 0.0045 top and 0.0050 second seen for a hot one.',
    }),
    read: z.optional(measure('Gap measured', '', { least: 0, greatest: 10 })),
  }),
  reckon: ({ unit: of, bore, factor, read }) =>
    clearance('bore', 'Bore', bore, of, [1, 10], factor, read),
})

/** A bearing's oil clearance by the journal: a thousandth of it. */
export const bearingClearance = defineSum({
  name: 'bearing-clearance',
  title: 'Bearing clearance',
  group: 'engine',
  formula: 'clearance = journal × 0.001',
  source: SOURCE,
  tolerance: '0.0005 in',
  hazards: [],
  input: z.strictObject({
    unit,
    journal: measure('Journal', '', { above: 0, greatest: 200 }),
    read: z.optional(measure('Clearance measured', '', { least: 0, greatest: 5 })),
  }),
  reckon: ({ unit: of, journal, read }) =>
    clearance('journal', 'Journal', journal, of, [0.5, 6], 0.001, read),
})
