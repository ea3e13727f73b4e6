import { type Car, openingScenes } from '../car.ts'
import { type Move, moveScenes } from '../moves.ts'
import { clearScene, type Done, doneScenes, recordChecks, slotScenes, startScene } from '../work.ts'
import type { Press, Scene, Yard } from '../yard.ts'
import { crew, dunmoreCar, speakers } from './car.ts'

const MARA = 'Mara Ellwood'

const done: readonly Done[] = [
  { key: 'arr.receive', when: '-14 Mon 10 > -14 Mon 13' },
  { key: 'arr.survey', when: '-14 Tue 8 > -14 Wed 12' },
  { key: 'arr.agree', when: '-13 Mon 10 > -13 Mon 12', hand: MARA },
  { key: 'str.trim', when: '-12 Mon 8 > -12 Wed 12' },
  { key: 'str.engine', when: '-11 Mon 8 > -11 Tue 12', hand: 'Tobin Ashby' },
  { key: 'str.body', when: '-11 Wed 8 > -11 Thu 15', hand: 'Tobin Ashby' },
  { key: 'str.skins', when: '-10 Mon 8 > -9 Wed 16' },
  { key: 'fra.scarf', when: '-8 Mon 8 > -3 Fri 15' },
  { key: 'fra.soak', when: 'd-1 8 > d-1 15:30' },
  { key: 'met.wash', when: 'd-1 8:30 > d-1 11', hand: 'Tobin Ashby' },
]

const moves: readonly Move[] = [
  {
    from: 'tarn',
    to: 'thistle',
    assemblies: ['trim'],
    released: '-11 Mon 9',
    received: '-11 Tue 9',
    condition: 'Top fabric in tatters, hoops sound.',
    care: 'The old fabric is the pattern.',
  },
  {
    from: 'tarn',
    to: 'bexwater',
    assemblies: ['engine'],
    released: '-10 Mon 9',
    received: '-10 Mon 15',
    condition: 'Drained, turned by hand, magneto in its box.',
    care: 'Crankcase is aluminium: no caustic.',
  },
  {
    from: 'tarn',
    to: 'hob',
    assemblies: ['chassis', 'skins'],
    released: '-2 Wed 9',
    received: '-2 Wed 14',
    condition: 'Chassis and 11 skins, numbers stamped and masked.',
    care: 'Skins at low pressure, fine grade.',
  },
  {
    from: 'hob',
    to: 'tarn',
    assemblies: ['chassis', 'skins'],
    released: 'd-2 15',
    received: 'd-2 16:30',
    condition: 'Bare metal, dry. 12 of 12 pieces.',
    care: 'Gloves: no bare hand on it.',
  },
]

const slots = [
  ['str.engine', 'tarn/Bay 2', 'chassis', '-12 Thu 9', '-11 Mon 8', '-11 Tue 17:30', MARA],
  ['cha.springs', 'tarn/Bay 1', 'running', 'd-4 9:15', 'd-2 8', 'd+3 17:30', MARA],
  ['met.hold', 'tarn/Booth', 'chassis', 'd-4 9', 'd+1 8', 'd+2 17:30', MARA],
  ['col.body', 'tarn/Booth', 'body', 'd-4 9:30', 'd+20 8', 'd+24 17:30', MARA],
  ['fra.skins', 'tarn/Metal bay', 'body', 'd-4 9:45', 'd+5 8', 'd+11 17:30', MARA],
  ['eng.metal', 'bexwater/Bench 1', 'engine', 'd-5 14', 'd-3 8', 'd+3 17:30', 'Jory Wenlock'],
] as const

/** The second car: its ash frame cures by the clock, its steel stands bare and must be in epoxy within three days. */
export function dunmore(yard: Yard): Scene[] {
  const car = dunmoreCar()
  const { at } = yard.calendar
  return [
    ...openingScenes(yard, car),
    ...done.flatMap((stage) => doneScenes(yard, car, crew, stage)),
    clearScene(yard, car, 'arr.agree', {
      who: 'Piers Aldous',
      when: '-13 Tue 16',
      remark: 'Agreed. No hurry, no shortcuts.',
    }),
    ...moves.flatMap((move) => moveScenes(yard, car, speakers, move)),
    ...slots.flatMap(([stage, bay, assembly, claimed, from, to, who]) =>
      slotScenes(yard, car, { who, claimed, bay, assembly, from, to, stage }),
    ),
    ...blasted(yard, car),
    startScene(car, 'eng.metal', at('d-3 9'), 'Wyn Pardoe'),
    startScene(car, 'cha.springs', at('d-2 10'), 'Tobin Ashby'),
    startScene(car, 'tri.make', at('-5 Mon 9'), 'Sorrel Penn'),
    ...beforeTheBooth(yard, car),
    {
      at: at('d-1 16'),
      play: (yard) =>
        car.press(yard, {
          at: at('d-1 16'),
          who: MARA,
          name: 'note.write',
          input: {
            on: car.stage('met.hold'),
            sharing: 'shared',
            text: 'Booth is ours first thing on the day of the slot: mix weighed out tonight, air dried.',
          },
        }),
    },
  ]
}

/** What the epoxy asks before the gun is lifted, and what of it is in date; the hoist is not, and somebody has seen it. */
function beforeTheBooth(yard: Yard, car: Car): Scene[] {
  const { at, date } = yard.calendar
  const press = (when: string, name: Press['name'], input: () => Press['input']): Scene => ({
    at: at(when),
    play: (yard) => car.press(yard, { at: at(when), who: MARA, name, input: input() }),
  })
  const entered = [
    ['booth clearance', 'The booth', 4, -120, 245],
    ['fit for spraying', 'Sil Harker', null, -60, 305],
    ['lifting examination', 'Engine hoist', null, -186, -4],
  ] as const
  return [
    press('d-3 10', 'stage.describe', () => ({
      stage: car.stage('met.hold'),
      hazards: ['isocyanate', 'solvent'],
      inDate: ['booth clearance', 'fit for spraying'],
      airAgeMost: 30,
      dewMarginLeast: 3,
      humidityMost: 85,
      surfaceLeast: 12,
      surfaceMost: 30,
    })),
    ...entered.map(([thing, name, minutes, done, until], i) =>
      press(`d-3 10:${10 + i}`, 'inDate.record', () => ({
        party: car.party('tarn'),
        thing,
        name,
        minutes,
        doneOn: date(done),
        until: date(until),
      })),
    ),
  ]
}

/** Hob Lane rang again. */
function blasted(yard: Yard, car: Car): Scene[] {
  const { at } = yard.calendar
  const rang = at('d-2 14')
  const looked = at('d-2 16:45')
  const stage = () => car.stage('met.blast')
  return [
    {
      at: rang,
      async play(yard) {
        await car.press(yard, {
          at: rang,
          who: MARA,
          name: 'stage.reportDone',
          input: {
            stage: stage(),
            startedAt: at('d-4 8'),
            endedAt: at('d-2 13'),
            reason: 'Hob Lane rang: chassis and skins are done, ready to fetch.',
            told: car.party('hob'),
          },
        })
        await recordChecks(yard, car, { key: 'met.blast' }, MARA, rang, { told: 'hob' })
      },
    },
    {
      at: looked,
      play: (yard) =>
        car.press(yard, {
          at: looked,
          who: MARA,
          name: 'stage.confirm',
          input: { stage: stage() },
        }),
    },
  ]
}
