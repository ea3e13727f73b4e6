import * as z from 'zod/mini'
import { choice, measure } from './fields.ts'
import { type Answer, ask, defineSum, fault, figure, refuse, result } from './sum.ts'
import { convert } from './units.ts'

/** Rolling circumference of a radial by its diameter: 3.05, from memory; a measured roll-out beats it. */
const ROLL = 3.05
const tyre = {
  width: measure('Tyre width', 'mm', { least: 100, greatest: 355 }),
  aspect: z.optional(
    measure('Aspect', '%', {
      least: 25,
      greatest: 100,
      help: 'Old radials without one are taken as 82 or 80: ask the maker.',
    }),
  ),
  rim: measure('Rim', 'in', { least: 8, greatest: 24 }),
}
const diameterOf = (width: number, aspect: number, rim: number) =>
  rim * 25.4 + (2 * width * aspect) / 100
const noAspect = (field: string) =>
  ask(
    field,
    'Aspect: none is printed on an old size. Take it from the maker, or measure a roll-out.',
  )

/** Tyre, axle and gear to road speed. */
export const gearing = defineSum({
  name: 'gearing',
  title: 'Gearing and road speed',
  group: 'running gear',
  formula:
    'diameter = rim × 25.4 + 2 × width × aspect ÷ 100; rolling = 3.05 × diameter; km/h per 1000 rev/min = rolling × 0.06 ÷ (axle × gear)',
  source: 'Arithmetic of tyre sizes (ISO 4000-1); 3.05 from memory.',
  tolerance: '0.1 %; the real tyre 2 %',
  hazards: [],
  input: z.strictObject({
    ...tyre,
    rollOut: z.optional(measure('Roll-out, measured', 'mm', { least: 1000, greatest: 3500 })),
    axle: measure('Axle', ':1', { above: 0, greatest: 10 }),
    gear: measure('Gear', ':1', { above: 0, greatest: 10 }),
  }),
  reckon({ width, aspect, rim, rollOut, axle, gear }): Answer {
    if (aspect === undefined && rollOut === undefined) return refuse(noAspect('aspect'))
    const diameter = aspect === undefined ? (rollOut ?? 0) / ROLL : diameterOf(width, aspect, rim)
    const rolling = rollOut ?? ROLL * diameter
    const speed = (rolling * 0.06) / (axle * gear)
    return result(
      [
        figure('diameter', 'Diameter', diameter, 'mm', 1),
        figure('rolling', 'Rolling circumference', rolling, 'mm', 0),
        figure('km/h', 'For 1000 rev/min', speed, 'km/h'),
        figure('mph', 'For 1000 rev/min', convert(speed, 'km/h', 'mph'), 'mph'),
      ],
      {
        working: [`${rolling.toFixed(0)} × 0.06 ÷ (${axle} × ${gear}) = ${speed.toFixed(2)} km/h`],
      },
    )
  },
})

/** What a speedometer says after another tyre. */
export const speedometer = defineSum({
  name: 'speedometer',
  title: 'Speedometer after another tyre',
  group: 'running gear',
  formula: 'true speed = shown × new circumference ÷ old',
  source: 'Arithmetic of tyre sizes (ISO 4000-1).',
  tolerance: '0.1 %; the real tyre 2 %',
  hazards: ['road'],
  input: z.strictObject({
    oldWidth: tyre.width,
    oldAspect: measure('Aspect, before', '%', { least: 25, greatest: 100 }),
    oldRim: tyre.rim,
    newWidth: measure('Tyre width, now', 'mm', { least: 100, greatest: 355 }),
    newAspect: measure('Aspect, now', '%', { least: 25, greatest: 100 }),
    newRim: measure('Rim, now', 'in', { least: 8, greatest: 24 }),
    shown: measure('Speed shown', '', { above: 0, greatest: 300 }),
  }),
  reckon(input) {
    const before = diameterOf(input.oldWidth, input.oldAspect, input.oldRim)
    const now = diameterOf(input.newWidth, input.newAspect, input.newRim)
    const error = now / before - 1
    return result(
      [
        figure('true', 'The car really does', input.shown * (now / before), '', 1),
        figure('error', 'Error', error * 100, '%', 1),
      ],
      { working: [`${now.toFixed(1)} ÷ ${before.toFixed(1)} = ${(now / before).toFixed(4)}`] },
    )
  },
})

const cylinder = (label: string) => measure(label, 'mm', { least: 8, greatest: 80 })
const brakes =
  'Any change from the maker’s sizes takes a licensed engineer’s sign-off. This sum advises none.'

/** Line pressure and piston force from the pedal: Pascal's law. */
export const brakeHydraulics = defineSum({
  name: 'brake-hydraulics',
  title: 'Brake hydraulics',
  group: 'running gear',
  formula:
    'pressure = foot × pedal × servo ÷ (π ÷ 4 × master²); force = pressure × piston area of one side',
  source: 'Pascal’s law; textbook.',
  tolerance: '0.1 bar',
  hazards: ['brakes', 'high pressure'],
  input: z.strictObject({
    foot: measure('Foot', 'N', { least: 0, greatest: 1500 }),
    pedal: measure('Pedal ratio', ':1', { least: 1, greatest: 10 }),
    servo: measure('Servo', '×', { least: 1, greatest: 10, help: '1 where there is none.' }),
    master: cylinder('Master cylinder'),
    piston: cylinder('Piston'),
    pistons: measure('Pistons on one side', '', {
      least: 1,
      greatest: 4,
      help: 'Opposed pistons: count one side.',
    }),
  }),
  reckon({ foot, pedal, servo, master, piston, pistons }) {
    const area = (d: number) => (Math.PI / 4) * d * d
    const pressure = (foot * pedal * servo) / area(master)
    const side = pistons * area(piston)
    return result(
      [
        figure('pressure', 'Line pressure', pressure * 10, 'bar', 1),
        figure('force', 'Force of the pistons', (pressure * side) / 1000, 'kN'),
        figure('areas', 'Area ratio', side / area(master), ':1'),
      ],
      {
        working: [
          `${foot} × ${pedal} × ${servo} ÷ ${area(master).toFixed(1)} mm² = ${pressure.toFixed(3)} N/mm²`,
        ],
        warnings: [brakes],
      },
    )
  },
})

/** What another master cylinder does to pressure and travel. */
export const masterChange = defineSum({
  name: 'master-change',
  title: 'Another master cylinder',
  group: 'running gear',
  formula: 'pressure × (old ÷ new)²; travel × (new ÷ old)² the other way',
  source: 'Pascal’s law; textbook.',
  tolerance: '0.001',
  hazards: ['brakes'],
  input: z.strictObject({ before: cylinder('Master before'), now: cylinder('Master now') }),
  reckon({ before, now }) {
    const ratio = (before / now) ** 2
    return result(
      [
        figure('pressure', 'Pressure, times', ratio, '×', 3),
        figure('travel', 'Pedal travel, times', ratio, '×', 3),
      ],
      { warnings: [brakes] },
    )
  },
})

/** Rate of a coil spring: G·d⁴ ÷ (8·Dm³·n), as in EN 13906-1 (from memory). */
export const coilSpring = defineSum({
  name: 'coil-spring',
  title: 'Rate of a coil spring',
  group: 'running gear',
  formula: 'k = G × d⁴ ÷ (8 × Dm³ × n)',
  source: 'EN 13906-1 (from memory).',
  tolerance: '0.5 %',
  hazards: ['springs'],
  input: z.strictObject({
    wire: measure('Wire', 'mm', { above: 0, greatest: 40 }),
    coil: measure('Mean diameter of the coil', 'mm', { above: 0, greatest: 400 }),
    turns: measure('Working coils', '', { above: 0, greatest: 40 }),
    shear: z.optional(
      measure('Shear modulus', 'N/mm²', {
        least: 70_000,
        greatest: 90_000,
        help: '79,300 for spring wire; 81,500 for some.',
      }),
    ),
  }),
  reckon({ wire, coil, turns, shear = 79_300 }) {
    const rate = (shear * wire ** 4) / (8 * coil ** 3 * turns)
    const index = coil / wire
    return result(
      [
        figure('N/mm', 'Rate', rate, 'N/mm'),
        figure('lbf/in', 'Rate', rate / (4.4482216152605 / 25.4), 'lbf/in', 1),
      ],
      {
        working: [`${shear} × ${wire}⁴ ÷ (8 × ${coil}³ × ${turns}) = ${rate.toFixed(2)} N/mm`],
        warnings:
          index < 4 || index > 16
            ? [`Coil to wire is ${index.toFixed(1)}: outside 4 to 16 the formula is poor.`]
            : [],
      },
    )
  },
})

/** Rate at the wheel. */
export const wheelRate = defineSum({
  name: 'wheel-rate',
  title: 'Spring rate at the wheel',
  group: 'running gear',
  formula: 'k × (motion ratio)²',
  source: 'Lever arithmetic.',
  tolerance: '0.5 %',
  hazards: ['springs'],
  input: z.strictObject({
    rate: measure('Rate of the spring', 'N/mm', { above: 0, greatest: 1000 }),
    motion: measure('Motion ratio', '', { above: 0, greatest: 2 }),
  }),
  reckon: ({ rate, motion }) =>
    result([figure('wheel', 'At the wheel', rate * motion ** 2, 'N/mm')], {
      working: [`${rate} × ${motion}² = ${(rate * motion ** 2).toFixed(2)} N/mm`],
    }),
})

const corner = (label: string) => measure(label, 'kg', { least: 0, greatest: 3000 })

/** Corner weights. */
export const cornerWeights = defineSum({
  name: 'corner-weights',
  title: 'Corner weights',
  group: 'running gear',
  formula: 'cross = (right front + left rear) ÷ total',
  source: 'Arithmetic; near 50 % common practice.',
  tolerance: '0.1 %',
  hazards: [],
  input: z.strictObject({
    leftFront: corner('Left front'),
    rightFront: corner('Right front'),
    leftRear: corner('Left rear'),
    rightRear: corner('Right rear'),
    driver: choice('Driver', ['aboard', 'not aboard'], {
      aboard: 'aboard',
      'not aboard': 'not aboard',
    }),
  }),
  reckon({ leftFront, rightFront, leftRear, rightRear, driver }) {
    const total = leftFront + rightFront + leftRear + rightRear
    if (total === 0) return refuse(fault('leftFront', 'Left front: all four are nothing.'))
    const share = (part: number) => (part / total) * 100
    return result(
      [
        figure('total', 'Total', total, 'kg', 0),
        figure('front', 'Front', share(leftFront + rightFront), '%', 1),
        figure('left', 'Left', share(leftFront + leftRear), '%', 1),
        figure('cross', 'Cross (right front and left rear)', share(rightFront + leftRear), '%', 1),
      ],
      {
        warnings: [`Weighed with the driver ${driver}, pads level within 1 mm (common practice).`],
      },
    )
  },
})

/** Toe between millimetres and degrees. */
export const toe = defineSum({
  name: 'toe',
  title: 'Toe in millimetres and degrees',
  group: 'running gear',
  formula: 'each wheel = asin(mm ÷ 2D), total twice that; mm = 2D × sin(total ÷ 2)',
  source: 'Geometry; ISO 8855 for the terms (from memory).',
  tolerance: '0.001°',
  hazards: ['lifting'],
  input: z.strictObject({
    given: choice('Given is', ['total', 'each wheel'], {
      total: 'the total',
      'each wheel': 'each wheel’s',
    }),
    mm: z.optional(
      measure('Toe', 'mm', { least: -30, greatest: 30, help: 'In is plus, out is minus.' }),
    ),
    degrees: z.optional(measure('Or degrees', '°', { least: -5, greatest: 5 })),
    minutes: z.optional(measure('and minutes', '′', { least: -59.999, greatest: 59.999 })),
    diameter: measure('Measured at diameter', 'mm', {
      least: 200,
      greatest: 800,
      help: 'The rim’s edge, or the tyre.',
    }),
  }),
  reckon({ given, mm, degrees, minutes, diameter }) {
    const both = given === 'total' ? 1 : 2
    if (mm === undefined && degrees === undefined && minutes === undefined)
      return refuse(fault('mm', 'Toe: missing. Give millimetres, or degrees and minutes.'))
    if (mm !== undefined && (degrees !== undefined || minutes !== undefined))
      return refuse(
        ask('degrees', 'Millimetres and degrees are both given: which is to be reckoned?'),
      )
    if (mm !== undefined) {
      const each = (Math.asin((mm * both) / (2 * diameter)) * 180) / Math.PI
      return result([
        figure('each', 'Each wheel', each, '°', 3),
        figure('total', 'Total', each * 2, '°', 3),
        figure('minutes', 'Total', each * 120, '′', 1),
      ])
    }
    if (
      minutes === undefined &&
      degrees !== undefined &&
      Math.abs(degrees % 1) > 0 &&
      Math.abs(degrees) < 1
    )
      return refuse(
        ask(
          'degrees',
          `Or degrees ${degrees}: decimal degrees, or 0° ${Math.round(Math.abs(degrees) * 100)}′? Write minutes in their own field, 0 there for decimals.`,
        ),
      )
    const total = ((degrees ?? 0) + (minutes ?? 0) / 60) * both
    return result([
      figure('mm', 'Total toe', 2 * diameter * Math.sin((total * Math.PI) / 360), 'mm'),
    ])
  },
})
