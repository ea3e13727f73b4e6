import { openingScenes } from '../car.ts'
import { type Order, orderScenes } from '../change-orders.ts'
import { partScenes } from '../parts.ts'
import { clearScene, type Done, doneScenes, slotScenes, startScene } from '../work.ts'
import type { Scene, Yard } from '../yard.ts'
import { corrieCar, crew } from './car.ts'

const JORY = 'Jory Wenlock'

const done: readonly Done[] = [
  { key: 'arr.receive', when: '-5 Mon 10 > -5 Mon 12' },
  { key: 'arr.survey', when: '-5 Tue 8 > -5 Tue 14' },
  { key: 'arr.agree', when: '-5 Thu 9 > -5 Thu 10', hand: JORY },
  { key: 'str.gearbox', when: '-4 Thu 8 > -4 Thu 15' },
  { key: 'gb.strip', when: '-3 Mon 8 > -3 Mon 15' },
]

const clutch: Order = {
  party: 'bexwater',
  who: JORY,
  title: 'Clutch: pressure plate too',
  text: 'Two fingers are worn through; the plate alone would judder.',
  reason: 'found',
  days: 1,
  lines: [{ text: 'Pressure plate', net: 9400 }],
  raised: 'd-2 14',
  sent: 'd-2 14:30',
}

const slots = [
  ['gb.build', 'bexwater/Bench 2', 'gearbox', 'd-5 9', 'd-3 8', 'd+2 17:30', JORY],
  ['asm.gearbox', 'bexwater/Bench 2', 'gearbox', 'd-5 9:15', 'd+6 8', 'd+7 17:30', JORY],
  ['wax.under', 'tarn/Wax bay', 'van', 'd-3 13', 'd+9 8', 'd+10 17:30', 'Mara Ellwood'],
] as const

/** The third car: mechanical work only, led by the engine shop. */
export function corrie(yard: Yard): Scene[] {
  const car = corrieCar()
  const estimated = yard.calendar.at('-5 Wed 9')
  return [
    ...openingScenes(yard, car),
    {
      at: estimated,
      play: (yard) =>
        car.press(yard, {
          at: estimated,
          who: JORY,
          name: 'estimate.add',
          input: {
            party: car.party('bexwater'),
            lines: [
              { text: 'Gearbox rebuilt', type: 'fixed', net: 98000, taxRate: 2000 },
              { text: 'Clutch plate and bearing', type: 'fixed', net: 16500, taxRate: 2000 },
              { text: 'Seals and gaskets', type: 'fixed', net: 34000, taxRate: 2000 },
              { text: 'Brakes, as found', type: 'allowance', net: 45000, taxRate: 2000 },
            ],
          },
        }),
    },
    ...done.flatMap((stage) => doneScenes(yard, car, crew, stage)),
    clearScene(yard, car, 'arr.agree', {
      who: 'Greta Moss',
      when: '-4 Mon 12',
      remark: 'Go ahead; I need it back for the round.',
    }),
    ...orderScenes(yard, car, clutch),
    ...partScenes(yard, car, {
      name: 'Layshaft bearings',
      party: 'bexwater',
      who: JORY,
      stages: ['gb.build'],
      wanted: '-3 Tue 9',
      ordered: { when: '-3 Tue 10', promised: -7, price: 6200 },
      arrived: 'd-5 9',
      inspected: { when: 'd-5 10', outcome: 'passed' },
    }),
    ...slots.flatMap(([stage, bay, assembly, claimed, from, to, who]) =>
      slotScenes(yard, car, { who, claimed, bay, assembly, from, to, stage }),
    ),
    startScene(car, 'gb.build', yard.calendar.at('d-3 10'), JORY),
  ]
}
