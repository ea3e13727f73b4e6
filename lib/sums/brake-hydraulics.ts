import * as z from 'zod/mini'
import { choice, measure, words } from './fields.ts'
import { type Answer, ask, defineSum, fault, figure, refuse, result } from './sum.ts'

/** The bore of a brake cylinder. */
export const brakeCylinder = (label: string) => measure(label, 'mm', { least: 8, greatest: 80 })

/** Who signs for a change of the maker's sizes. */
export const brakeEngineer = z.optional(
  words('Licensed engineer', 'Who signs for a change of the maker’s sizes.'),
)

/** A change of the maker's sizes without a licensed engineer's name; null where there is one. */
export const unsignedChange = (engineer: string | undefined): Answer | null =>
  engineer === undefined
    ? refuse(
        ask(
          'engineer',
          'Licensed engineer: any change from the maker’s sizes takes a licensed engineer’s sign-off. Who signs for it?',
        ),
      )
    : null

/** What stands beside every answer about brakes. */
export const BRAKE_WARNING = 'This sum advises no change of the maker’s sizes.'

const area = (diameter: number): number => (Math.PI / 4) * diameter ** 2

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
    master: brakeCylinder('Master cylinder'),
    piston: brakeCylinder('Piston'),
    pistons: measure('Pistons on one side', '', {
      least: 1,
      greatest: 4,
      help: 'Opposed pistons: count one side.',
    }),
    sizes: choice('Sizes', ['maker’s', 'changed'], {
      'maker’s': 'as the maker fitted them',
      changed: 'changed',
    }),
    engineer: brakeEngineer,
  }),
  reckon({ foot, pedal, servo, master, piston, pistons, sizes, engineer }) {
    if (!Number.isInteger(pistons))
      return refuse(fault('pistons', `Pistons on one side: counted whole; ${pistons} is not.`))
    const unsigned = sizes === 'changed' ? unsignedChange(engineer) : null
    if (unsigned !== null) return unsigned
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
          ...(engineer === undefined ? [] : [`Change signed for by ${engineer}.`]),
        ],
        warnings: [BRAKE_WARNING],
      },
    )
  },
})
