import * as z from 'zod/mini'
import { measure } from './fields.ts'
import { defineSum, fault, figure, refuse, result } from './sum.ts'

const hours = (label: string, help = '') =>
  measure(label, 'h', { above: 0, greatest: 100_000, help })

/** Efficiency and productivity. */
export const efficiency = defineSum({
  name: 'efficiency',
  title: 'Efficiency and productivity',
  group: 'money and hours',
  formula: 'efficiency = sold ÷ worked; productivity = sold ÷ attended',
  source: 'Common practice.',
  tolerance: '0.1 %',
  hazards: [],
  input: z.strictObject({
    sold: hours('Sold'),
    worked: hours('Worked'),
    attended: hours('Attended'),
  }),
  reckon({ sold, worked, attended }) {
    if (worked > attended)
      return refuse(fault('attended', 'Attended: less than was worked. One of the two is wrong.'))
    return result(
      [
        figure('efficiency', 'Efficiency', (sold / worked) * 100, '%', 1),
        figure('productivity', 'Productivity', (sold / attended) * 100, '%', 1),
      ],
      { working: [`${sold} ÷ ${worked}; ${sold} ÷ ${attended}`] },
    )
  },
})

/** Three-point estimate: mean (a + 4m + b) ÷ 6, deviation (b − a) ÷ 6 (PERT; textbook, from memory). */
export const threePoint = defineSum({
  name: 'three-point',
  title: 'Three-point estimate',
  group: 'money and hours',
  formula: 'mean = (least + 4 × likely + most) ÷ 6; deviation = (most − least) ÷ 6',
  source: 'Three-point method, PERT; textbook, from memory.',
  tolerance: '0.01 h',
  hazards: [],
  input: z.strictObject({ least: hours('Least'), likely: hours('Likely'), most: hours('Most') }),
  reckon({ least, likely, most }) {
    if (least > likely || likely > most)
      return refuse(fault('likely', 'Likely: the three must go up from least to most.'))
    const mean = (least + 4 * likely + most) / 6
    return result(
      [
        figure('mean', 'Mean', mean, 'h'),
        figure('deviation', 'Standard deviation', (most - least) / 6, 'h'),
      ],
      { working: [`(${least} + 4 × ${likely} + ${most}) ÷ 6 = ${mean.toFixed(3)} h`] },
    )
  },
})

/** What a stage will come to: worked and what is left, as the hand says it, not estimate less worked. */
export const timeToFinish = defineSum({
  name: 'time-to-finish',
  title: 'Hours to the finish',
  group: 'money and hours',
  formula: 'at the finish = worked + what the hand says is left',
  source: 'Common practice.',
  tolerance: 'Of what the hand says.',
  hazards: [],
  input: z.strictObject({
    worked: measure('Worked', 'h', { least: 0, greatest: 100_000 }),
    left: measure('Left', 'h', {
      least: 0,
      greatest: 100_000,
      help: 'Ask the hand; not the estimate less what was worked.',
    }),
    estimate: z.optional(hours('Estimate')),
  }),
  reckon({ worked, left, estimate }) {
    const finish = worked + left
    return result(
      [
        figure('finish', 'At the finish', finish, 'h'),
        ...(estimate === undefined
          ? []
          : [figure('over', 'Over the estimate', finish - estimate, 'h')]),
      ],
      { working: [`${worked} + ${left} = ${finish.toFixed(2)} h`] },
    )
  },
})
