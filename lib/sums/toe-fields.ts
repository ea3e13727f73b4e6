import { choice, measure } from './fields.ts'

/** What toe is always said of: the whole axle or a wheel, and where it was measured. */
export const toeFields = {
  given: choice('Given is', ['total', 'each wheel'], {
    total: 'the total',
    'each wheel': 'each wheel’s',
  }),
  at: choice('Measured at', ['rim edge', 'tyre'], {
    'rim edge': 'the rim’s edge',
    tyre: 'the tyre',
  }),
  diameter: measure('Diameter there', 'mm', { least: 200, greatest: 800 }),
}

/** Where the sums of toe are from. */
export const TOE_SOURCE = 'Geometry; ISO 8855 for the terms (from memory).'
