import { choice, measure } from './fields.ts'
import { ask, type Fault, fault } from './sum.ts'

/** Rolling circumference of a radial by its diameter, from memory; a measured roll-out beats it. */
const RADIAL_ROLL = 3.05
/** Cross-plies differ: 2.99 to 3.02 measured. */
const CROSS_PLY = '2.99 to 3.02'

interface Tyre {
  readonly width?: number | undefined
  readonly aspect?: number | undefined
  readonly rim?: number | undefined
  readonly rollOut?: number | undefined
}

/** How a tyre is built; only a radial's roll is known from its size. */
export const tyreBuild = choice('Tyre', ['radial', 'cross-ply'], {
  radial: 'radial',
  'cross-ply': 'cross-ply',
})

/** The fields of a tyre's size, their labels ending alike where there are two. */
export const tyreFields = (which = '') => ({
  width: measure(`Width${which}`, 'mm', {
    least: 100,
    greatest: 355,
    help: 'An old size in inches has no aspect: measure the roll-out.',
  }),
  aspect: measure(`Aspect${which}`, '%', { least: 25, greatest: 100 }),
  rim: measure(`Rim${which}`, 'in', { least: 8, greatest: 24 }),
  rollOut: measure(`Roll-out${which}, measured`, 'mm', {
    least: 1000,
    greatest: 3500,
    help: 'One turn of the wheel on the floor. It beats the size.',
  }),
})

/** Where the arithmetic of tyres is from. */
export const TYRE_SOURCE =
  'Size arithmetic of ISO 4000-1; the factor 3.05 from memory. A measured roll-out beats both.'

/** Diameter by size in mm, null where a part of it is missing. */
export const diameterOf = ({ width, aspect, rim }: Tyre): number | null =>
  width === undefined || aspect === undefined || rim === undefined
    ? null
    : rim * 25.4 + (2 * width * aspect) / 100

/** Rolling circumference in mm, or what is missing for it. `names` are the fields of this tyre. */
export function rollingOf(
  tyre: Tyre,
  build: 'radial' | 'cross-ply',
  names: { readonly [F in keyof Required<Tyre>]: string },
): number | Fault {
  if (tyre.rollOut !== undefined) return tyre.rollOut
  if (build === 'cross-ply')
    return fault(
      names.rollOut,
      `Roll-out: a cross-ply rolls ${CROSS_PLY} times its diameter, so it is measured: one turn of the wheel.`,
    )
  const diameter = diameterOf(tyre)
  if (diameter !== null) return diameter * RADIAL_ROLL
  if (tyre.width !== undefined && tyre.rim !== undefined)
    return ask(names.aspect, 'Aspect: none is printed on an old radial. Which is it?', [
      { words: '82 %, as most of them', set: { [names.aspect]: 82 } },
      { words: '80 %', set: { [names.aspect]: 80 } },
    ])
  return fault(
    tyre.width === undefined ? names.width : names.rim,
    'Tyre: give its width, aspect and rim, or its roll-out as measured.',
  )
}
