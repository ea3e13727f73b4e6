import * as z from 'zod/mini'
import { choice, measure } from './fields.ts'
import { defineSum, figure, result } from './sum.ts'
import { convert } from './units.ts'

/** Litres for 100 km at a mile a gallon, from the exact gallon and mile. */
const litresAtOne = (gallon: 'imp gal' | 'US gal'): number =>
  (convert(1, gallon, 'L') / convert(1, 'mile', 'km')) * 100
const IMPERIAL = litresAtOne('imp gal')
const US = litresAtOne('US gal')

/** Fuel used, between miles a gallon and litres for 100 km. */
export const fuelUse = defineSum({
  name: 'fuel-use',
  title: 'Fuel used',
  group: 'units',
  formula: 'L/100 km = 282.480936 ÷ mpg (imperial), 235.214583 ÷ mpg (US); and back by the same',
  source: 'Exact gallons and mile.',
  tolerance: '1e-9 of the figure',
  hazards: [],
  input: z.strictObject({
    value: measure('Figure', '', { above: 0, greatest: 1000 }),
    in: choice('In', ['mpg imp', 'mpg US', 'L/100 km'], {
      'mpg imp': 'miles an imperial gallon',
      'mpg US': 'miles a US gallon',
      'L/100 km': 'litres for 100 km',
    }),
  }),
  reckon({ value, in: from }) {
    const litres = from === 'L/100 km' ? value : (from === 'mpg imp' ? IMPERIAL : US) / value
    return result(
      [
        figure('L/100 km', 'Litres for 100 km', litres, 'L'),
        figure('mpg imp', 'Miles an imperial gallon', IMPERIAL / litres, '', 1),
        figure('mpg US', 'Miles a US gallon', US / litres, '', 1),
      ],
      { working: [`${value} ${from} = ${litres.toFixed(4)} L for 100 km`] },
    )
  },
})
