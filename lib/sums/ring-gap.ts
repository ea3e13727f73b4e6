import * as z from 'zod/mini'
import { measure } from './fields.ts'
import { fitUnit, gapField, ruleOfFit } from './rule-of-fit.ts'
import { defineSum } from './sum.ts'

/** Ring gap by the bore. */
export const ringGap = defineSum({
  name: 'ring-gap',
  title: 'Piston ring gap',
  group: 'engine',
  formula: 'gap = bore × factor',
  source:
    'Common practice; a trade magazine’s worked figures of January 2019 (read). The maker’s figure always replaces the rule.',
  tolerance: '0.0005 in',
  hazards: [],
  input: z.strictObject({
    unit: fitUnit,
    bore: measure('Bore', '', { above: 0, greatest: 300 }),
    factor: measure('Factor', '', {
      least: 0.002,
      greatest: 0.01,
      help: '0.004 for a road engine; 0.0045 top and 0.0050 second seen for a hot one.',
    }),
    maker: z.optional(gapField('Ring maker’s least gap', 'It replaces the rule.')),
    read: z.optional(gapField('Gap measured')),
  }),
  reckon: ({ bore, ...fit }) =>
    ruleOfFit({ field: 'bore', label: 'Bore', limits: [1, 10], across: bore, ...fit }),
})
