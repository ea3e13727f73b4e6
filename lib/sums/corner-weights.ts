import * as z from 'zod/mini'
import { choice, measure } from './fields.ts'
import { defineSum, fault, figure, refuse, result } from './sum.ts'

const corner = (label: string) => measure(label, 'kg', { least: 0, greatest: 3000 })

/** Corner weights. */
export const cornerWeights = defineSum({
  name: 'corner-weights',
  title: 'Corner weights',
  group: 'running gear',
  formula: 'cross = (right front + left rear) ÷ total',
  source: 'Arithmetic; near 50 % common practice.',
  tolerance: '0.1 %',
  hazards: ['crushing'],
  input: z.strictObject({
    leftFront: corner('Left front'),
    rightFront: corner('Right front'),
    leftRear: corner('Left rear'),
    rightRear: corner('Right rear'),
    pads: choice('Pads level within 1 mm', ['yes', 'no'], { yes: 'yes', no: 'no' }),
    driver: measure('Driver aboard', 'kg', {
      least: 0,
      greatest: 300,
      help: 'The driver, or sacks in the seat; 0 where there is none.',
    }),
  }),
  reckon({ leftFront, rightFront, leftRear, rightRear, pads, driver }) {
    if (pads === 'no')
      return refuse(fault('pads', 'Pads: not level. Shim them within 1 mm and weigh again.'))
    const total = leftFront + rightFront + leftRear + rightRear
    if (total === 0) return refuse(fault('leftFront', 'Left front: all four are nothing.'))
    const share = (part: number) => (part / total) * 100
    const cross = share(rightFront + leftRear)
    return result(
      [
        figure('cross', 'Cross, right front and left rear', cross, '%', 1),
        figure('front', 'Front', share(leftFront + rightFront), '%', 1),
        figure('left', 'Left', share(leftFront + leftRear), '%', 1),
        figure('total', 'Total', total, 'kg', 0),
      ],
      {
        working: [
          `(${rightFront} + ${leftRear}) ÷ ${total} = ${cross.toFixed(2)} %`,
          `Pads level within 1 mm; ${driver === 0 ? 'nobody' : `${driver} kg`} aboard.`,
        ],
      },
    )
  },
})
