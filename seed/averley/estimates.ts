import { plus } from '../calendar.ts'
import type { Car } from '../car.ts'
import type { Scene, Yard } from '../yard.ts'
import { crew } from './car.ts'

type Line = readonly [text: string, type: 'fixed' | 'allowance', pounds: number]

const TAX_RATE = 2000

/** The first prices, before tax, in whole pounds; what isn't known yet is an allowance. */
const estimates: { readonly [party: string]: readonly Line[] } = {
  tarn: [
    ['Strip, list and store', 'fixed', 3900],
    ['Metalwork, as seen on the ramp', 'fixed', 9800],
    ['Metalwork not seen before blasting', 'allowance', 2500],
    ['Blasting, by Hob Lane', 'fixed', 1450],
    ['Filler, high-build and blocking', 'fixed', 8200],
    ['Colour and lacquer', 'fixed', 6400],
    ['Suspension, steering and brakes', 'fixed', 4700],
    ['Assembly and snags', 'fixed', 7600],
  ],
  bexwater: [
    ['Engine: strip, machine, build, run', 'fixed', 6850],
    ['Block and head repairs not seen yet', 'allowance', 900],
    ['Gearbox, clutch and release', 'fixed', 1980],
    ['Axle and propeller shaft', 'fixed', 1640],
    ['Carburettors and pump', 'fixed', 520],
  ],
  thistle: [
    ['Seats in hide', 'fixed', 4900],
    ['Door cards, panels and carpets', 'fixed', 2750],
    ['Headlining', 'fixed', 1180],
    ['Frames and springs', 'allowance', 600],
  ],
  northgate: [
    ['14 pieces in chromium', 'fixed', 2380],
    ['Chassis parts and fasteners', 'fixed', 940],
  ],
  ferrier: [
    ['Windscreen, made to pattern', 'fixed', 1420],
    ['Glass in, seals set', 'fixed', 780],
  ],
  quill: [
    ['Loom made new on the board', 'fixed', 2150],
    ['Starter, dynamo, instruments', 'fixed', 1060],
    ['Fitting and first power', 'fixed', 980],
  ],
  coldbrook: [['Visits and reports, four', 'fixed', 480]],
}

/** Every shop's manager enters its own. */
export const estimateScenes = (yard: Yard, car: Car): Scene[] =>
  Object.entries(estimates).map(([party, lines], i) => {
    const at = plus(yard.calendar.at('-34 Mon 8:30'), 5 * i)
    const taxRate = party === 'coldbrook' ? 0 : TAX_RATE
    return {
      at,
      play: (yard) =>
        car.press(yard, {
          at,
          who: manager(party),
          name: 'estimate.add',
          input: {
            party: car.party(party),
            lines: lines.map(([text, type, pounds]) => ({
              text,
              type,
              net: pounds * 100,
              taxRate,
            })),
          },
        }),
    }
  })

const managers: { readonly [party: string]: string } = {
  ferrier: 'Nell Osgood',
  coldbrook: 'Odile Marsh',
}
const manager = (party: string): string => crew[party]?.[1] ?? managers[party] ?? ''
