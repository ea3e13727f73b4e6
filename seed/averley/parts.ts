import type { Car } from '../car.ts'
import { type Ordered, partScenes } from '../parts.ts'
import type { Scene, Yard } from '../yard.ts'

const MARA = 'Mara Ellwood'
const NELL = 'Nell Osgood'

/** What was and is to come for the Averley. The windscreen's promise has slipped three times. */
const parts: readonly Ordered[] = [
  {
    name: 'Windscreen, made to pattern',
    number: 'W 61/3',
    party: 'tarn',
    who: MARA,
    supplier: 'ferrier',
    stages: ['asm.glass'],
    wanted: '-28 Mon 9',
    ordered: { when: '-26 Mon 10', promised: -98, price: 142000 },
    promises: [
      {
        when: '-15 Wed 9',
        who: NELL,
        for: -49,
        remark: 'The mould cracked; a new one is being made.',
      },
      { when: '-8 Tue 15', who: NELL, for: -14, remark: 'First screen sagged at the corners.' },
      {
        when: '-3 Wed 11',
        who: NELL,
        for: 26,
        remark: 'Second screen in the kiln; third week from now.',
      },
    ],
  },
  {
    name: 'Cylinder liners, six',
    party: 'bexwater',
    who: 'Jory Wenlock',
    supplier: 'sallow',
    stages: ['eng.bore'],
    wanted: '-29 Tue 9',
    ordered: { when: '-29 Fri 9', promised: -161, price: 50400 },
    arrived: '-22 Wed 10',
    inspected: { when: '-22 Wed 15', outcome: 'passed', remark: 'All six within 0.01 mm.' },
  },
  {
    name: 'Pistons and rings, set',
    number: '3L P/030',
    party: 'bexwater',
    who: 'Jory Wenlock',
    stages: ['eng.bore', 'eng.dry'],
    wanted: '-29 Tue 9',
    ordered: { when: '-29 Fri 9', promised: -168 },
    arrived: '-24 Thu 9',
    inspected: { when: '-24 Thu 16', outcome: 'passed' },
  },
  {
    name: 'Brake hoses, set of five',
    party: 'tarn',
    who: MARA,
    stages: ['asm.lines'],
    wanted: '-21 Fri 10',
    ordered: { when: '-21 Fri 11', promised: -126, price: 12800 },
    arrived: '-18 Mon 14',
    inspected: { when: '-18 Tue 9', outcome: 'passed' },
  },
  {
    name: 'Rear screen seal',
    party: 'tarn',
    who: MARA,
    stages: ['asm.glass'],
    wanted: '-10 Mon 9',
    ordered: { when: '-10 Tue 9', promised: -42 },
    arrived: '-5 Thu 10',
    inspected: { when: '-5 Thu 15', outcome: 'rejected', remark: 'Wrong section: lip 3 mm short.' },
  },
  {
    name: 'Door seals, four',
    party: 'tarn',
    who: MARA,
    stages: ['asm.doors'],
    wanted: '-6 Mon 9',
    ordered: { when: '-6 Tue 9', promised: 12 },
  },
]

/** Every part's way. */
export const averleyPartScenes = (yard: Yard, car: Car): Scene[] =>
  parts.flatMap((part) => partScenes(yard, car, part))
