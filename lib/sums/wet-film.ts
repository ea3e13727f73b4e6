import * as z from 'zod/mini'
import { defineSum } from './define-sum.ts'
import { quantity } from './fields.ts'
import { figure, inUnit, plain, result } from './outcome.ts'

/** The wet film that dries to the wanted dry one. */
export const wetFilm = defineSum({
  name: 'wet-film',
  title: 'Wet film for a dry film',
  purpose: 'What the comb must show while it is wet, so that it dries to the film on the sheet.',
  group: 'paint',
  input: z.object({
    dry: quantity('Dry film', ['µm', 'thou'], { above: 0, greatest: 3000 }),
    solids: quantity('Volume solids', ['%'], {
      above: 0,
      greatest: 100,
      help: 'Of the unthinned paint, from its data sheet.',
    }),
    thinner: quantity('Thinner', ['%'], {
      least: 0,
      greatest: 100,
      help: 'By volume of the paint; 0 where the solids are those of the mix as sprayed.',
    }),
  }),
  formula: 'wet = dry × (100 + thinner %) ÷ volume solids %',
  sources: [
    {
      basis: 'published',
      says: 'Coating makers’ technical notes; ISO 2808 for how it is measured',
    },
  ],
  tolerance: '0.5 µm; the comb itself reads in steps of 5 µm or more.',
  hazards: ['solvent', 'isocyanate'],
  reckon({ dry, solids, thinner }) {
    const wet = inUnit(dry, 'µm').times(inUnit(thinner, '%').plus(100)).div(solids.value)
    return result({
      figures: [figure('wet', 'Wet film', wet, 'µm', 1)],
      working: [
        `${plain(inUnit(dry, 'µm'))} × (100 + ${thinner.value}) ÷ ${solids.value} = ${wet.toFixed(3)} µm`,
      ],
    })
  },
})
