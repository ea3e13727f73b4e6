import type { Car } from '../car.ts'
import { clearScene, type Done, doneScenes, inviteScene, slotScenes } from '../work.ts'
import type { Scene, Yard } from '../yard.ts'
import { crew } from './car.ts'

const SIL = 'Sil Harker'
const MARA = 'Mara Ellwood'

/** What was done over eight months, stage by stage: weeks from this one, weekday, hour. */
const done: readonly Done[] = [
  { key: 'arr.receive', when: '-35 Mon 10 > -35 Mon 13' },
  {
    key: 'arr.survey',
    when: '-35 Tue 8 > -35 Wed 12',
    readings: { 'film thickness as received': 214 },
  },
  { key: 'arr.gapmap', when: '-35 Wed 13 > -35 Thu 10', hand: SIL },
  { key: 'arr.agree', when: '-34 Mon 10 > -34 Mon 15', hand: MARA },
  { key: 'str.safe', when: '-34 Wed 8 > -34 Wed 13' },
  { key: 'str.trim', when: '-34 Thu 8 > -33 Mon 12', hand: SIL },
  { key: 'str.glass', when: '-33 Mon 13 > -33 Mon 17', hand: SIL },
  { key: 'str.loom', when: '-33 Tue 8 > -33 Wed 15' },
  { key: 'str.engine', when: '-33 Thu 8 > -33 Fri 16' },
  { key: 'str.running', when: '-32 Mon 8 > -32 Tue 17' },
  { key: 'str.panels', when: '-32 Wed 8 > -32 Thu 11', hand: SIL },
  { key: 'bl.hold', when: '-31 Tue 13:30 > -31 Wed 17', hand: SIL },
  { key: 'bl.survey', when: '-30 Mon 9 > -30 Tue 12' },
  { key: 'met.floor', when: '-30 Thu 8 > -26 Wed 16' },
  { key: 'met.panels', when: '-29 Mon 8 > -23 Fri 15', hand: SIL },
  { key: 'met.sills', when: '-26 Thu 8 > -22 Fri 16' },
  { key: 'met.weld', when: '-21 Mon 9 > -21 Mon 12' },
  { key: 'met.trial', when: '-21 Tue 8 > -19 Fri 16' },
  { key: 'met.gapok', when: '-18 Mon 10 > -18 Mon 12', hand: SIL },
  { key: 'ep.shell', when: '-17 Mon 8 > -17 Mon 17', hand: SIL },
  { key: 'ep.seam', when: '-17 Tue 8 > -17 Wed 16' },
  { key: 'fil.shell', when: '-17 Thu 8 > -16 Tue 16' },
  { key: 'col.card', when: '-16 Mon 9 > -16 Tue 15', hand: SIL },
  { key: 'hb.shell', when: '-16 Wed 8 > -16 Wed 16', hand: SIL },
  { key: 'hb.block', when: '-15 Mon 8 > -12 Thu 16' },
  { key: 'col.batch', when: '-12 Fri 8 > -12 Fri 11', hand: SIL },
  { key: 'seal.shell', when: '-11 Mon 8 > -11 Mon 14', hand: SIL },
  { key: 'col.shell', when: '-11 Tue 8 > -11 Wed 12', hand: SIL },
  { key: 'lac.shell', when: '-11 Wed 13 > -11 Thu 10', hand: SIL },
  { key: 'lac.polish', when: '-10 Mon 8 > -8 Wed 16' },
  { key: 'lac.accept', when: '-8 Thu 10 > -8 Thu 12', hand: SIL },
  { key: 'wax.cavity', when: '-7 Mon 9 > -7 Tue 12' },
  { key: 'loo.make', when: '-28 Mon 8 > -25 Fri 16' },
  { key: 'ele.bench', when: '-22 Mon 8 > -21 Wed 16' },
  { key: 'loo.fit', when: '-7 Thu 8 > -6 Tue 16' },
  { key: 'asm.susp', when: '-6 Thu 8 > -4 Mon 16' },
  { key: 'asm.lines', when: '-4 Tue 8 > -3 Thu 12' },
  { key: 'asm.wheels', when: '-3 Fri 9 > -3 Fri 12' },
  {
    key: 'brk.build',
    when: '-20 Mon 8 > -20 Wed 16',
    hand: SIL,
    readings: { 'disc thickness against stamped least': 12.4 },
  },
  { key: 'coa.parts', when: '-30 Mon 8 > -27 Fri 15' },
  { key: 'pla.plate', when: '-17 Mon 8 > -12 Fri 15' },
  { key: 'eng.strip', when: '-31 Mon 8 > -31 Tue 16' },
  { key: 'eng.crack', when: '-30 Mon 8 > -30 Tue 16' },
  { key: 'eng.report', when: '-29 Mon 9 > -29 Mon 15' },
  { key: 'gb.strip', when: '-28 Mon 8 > -28 Tue 12' },
  { key: 'ax.build', when: '-26 Mon 8 > -25 Wed 16' },
  {
    key: 'eng.bore',
    when: '-21 Mon 8 > -21 Tue 15',
    readings: { 'compression ratio by burette': 8.4 },
  },
  { key: 'eng.dry', when: '-18 Mon 8 > -18 Wed 12' },
  { key: 'eng.build', when: '-16 Mon 8 > -16 Wed 12' },
  { key: 'eng.head', when: '-14 Mon 8 > -14 Tue 15' },
  { key: 'fue.carb', when: '-13 Mon 8 > -13 Wed 12', readings: { 'float level': 14.2 } },
  { key: 'eng.prime', when: '-8 Tue 9 > -8 Tue 14' },
  { key: 'eng.dress', when: '-4 Mon 8 > -4 Wed 12' },
  { key: 'tri.cards', when: '-9 Mon 8 > -6 Fri 15' },
]

/** Who cleared which hold or witness point, and when. */
const cleared = [
  { key: 'arr.agree', who: 'Ines Halloran', when: '-34 Tue 17', remark: 'Signed and sent back.' },
  {
    key: 'bl.survey',
    who: 'Ines Halloran',
    when: '-30 Wed 12',
    remark: 'Seen in the metal. Go on.',
  },
  { key: 'met.weld', who: 'Odile Marsh', when: '-21 Mon 13', remark: 'Each seam seen and marked.' },
  {
    key: 'met.gapok',
    who: 'Ines Halloran',
    when: '-18 Mon 13',
    remark: 'Left rear door a hair wide at the foot: accepted.',
  },
  {
    key: 'col.card',
    who: 'Ines Halloran',
    when: '-16 Wed 17',
    remark: 'The warmer of the two ivories.',
  },
  {
    key: 'lac.accept',
    who: 'Ines Halloran',
    when: '-8 Thu 14',
    remark: 'Beautiful. No faults listed.',
  },
  {
    key: 'eng.crack',
    who: 'Jory Wenlock',
    when: '-30 Tue 17',
    remark: 'Crack at number four seen.',
  },
  { key: 'eng.report', who: 'Ines Halloran', when: '-29 Thu 16:30' },
  {
    key: 'eng.dry',
    who: 'Jory Wenlock',
    when: '-18 Wed 14',
    remark: 'Sheet signed, all in limits.',
  },
  { key: 'eng.prime', who: MARA, when: '-8 Wed 11', remark: 'Film with the clock seen.' },
  { key: 'gb.strip', who: 'Ines Halloran', when: '-28 Thu 17' },
  { key: 'brk.build', who: 'Odile Marsh', when: '-20 Thu 11', remark: 'Lines and linings seen.' },
]

/** Bays that the work needed; the lead's own are agreed as they are claimed. */
const slots = [
  ['str.engine', 'Bay 2', '-34 Thu 9', '-33 Thu 8', '-33 Fri 17:30'],
  ['bl.hold', 'Booth', '-32 Thu 16', '-31 Tue 12', '-31 Wed 17:30'],
  ['ep.shell', 'Booth', '-18 Tue 9', '-17 Mon 8', '-17 Mon 17:30'],
  ['hb.shell', 'Booth', '-18 Tue 9', '-16 Wed 8', '-16 Wed 17:30'],
  ['seal.shell', 'Booth', '-13 Fri 9', '-11 Mon 8', '-11 Mon 17:30'],
  ['col.shell', 'Booth', '-13 Fri 9', '-11 Tue 8', '-11 Wed 12:30'],
  ['lac.shell', 'Booth', '-13 Fri 9', '-11 Wed 12:30', '-11 Thu 17:30'],
] as const

/** Everything that was signed off, with the slots and points on the way. */
export const historyScenes = (yard: Yard, car: Car): Scene[] => [
  ...slots.flatMap(([stage, bay, claimed, from, to]) =>
    slotScenes(yard, car, {
      who: MARA,
      claimed,
      bay: `tarn/${bay}`,
      assembly: 'shell',
      from,
      to,
      stage,
    }),
  ),
  ...done.flatMap((stage) => doneScenes(yard, car, crew, stage)),
  inviteScene(yard, car, 'brk.build', SIL, '-21 Fri 9', '-20 Thu 11'),
  inviteScene(yard, car, 'eng.prime', 'Jory Wenlock', '-9 Thu 9', '-8 Tue 13'),
  ...cleared.map(({ key, ...clear }) => clearScene(yard, car, key, clear)),
  ...panelsOnAndOff(yard, car),
]

const panels = ['doors', 'bonnet', 'bootlid', 'wings']

/** The panels hang on the shell while it is blocked, and come off before the booth. */
const panelsOnAndOff = (yard: Yard, car: Car): Scene[] =>
  panels.flatMap((panel) => {
    const on = yard.calendar.at('-16 Fri 14')
    const off = yard.calendar.at('-12 Fri 13')
    return [
      {
        at: on,
        play: (yard: Yard) =>
          car.press(yard, {
            at: on,
            who: MARA,
            name: 'assembly.fit',
            input: {
              assembly: car.assembly(panel),
              host: car.assembly('shell'),
              reason: 'Hung to be blocked through the lines.',
            },
          }),
      },
      {
        at: off,
        play: (yard: Yard) =>
          car.press(yard, {
            at: off,
            who: MARA,
            name: 'assembly.takeOff',
            input: { assembly: car.assembly(panel), reason: 'Off again for the booth.' },
          }),
      },
    ]
  })
