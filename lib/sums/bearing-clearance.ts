import * as z from 'zod/mini'
import { measure } from './fields.ts'
import { fitUnit, gapField, ruleOfFit } from './rule-of-fit.ts'
import { defineSum } from './sum.ts'

const FACTOR = 0.001

/** A bearing's oil clearance by the journal: a thousandth of it. */
export const bearingClearance = defineSum({
  name: 'bearing-clearance',
  title: 'Bearing clearance',
  group: 'engine',
  formula: 'clearance = journal × 0.001, and what is added',
  source: 'Common practice, no source. The maker’s figure always replaces the rule.',
  tolerance: '0.0005 in',
  hazards: [],
  input: z.strictObject({
    unit: fitUnit,
    journal: measure('Journal', '', { above: 0, greatest: 200 }),
    added: z.optional(gapField('Added', 'Some add 0.0005 in.')),
    maker: z.optional(gapField('Maker’s least clearance', 'It replaces the rule.')),
    read: z.optional(gapField('Clearance measured')),
  }),
  reckon: ({ journal, ...fit }) =>
    ruleOfFit({
      field: 'journal',
      label: 'Journal',
      limits: [0.5, 6],
      across: journal,
      factor: FACTOR,
      ...fit,
    }),
})
