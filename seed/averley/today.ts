import { all } from '../../lib/record/table.ts'
import type { Car } from '../car.ts'
import { orderNow } from '../change-orders.ts'
import { clearScene, recordChecks, slotScenes, startScene } from '../work.ts'
import type { Press, Scene, Yard } from '../yard.ts'
import { CARBURETTORS } from './money.ts'

const MARA = 'Mara Ellwood'
const INES = 'Ines Halloran'
const JORY = 'Jory Wenlock'
const SORREL = 'Sorrel Penn'

/** The readings that are still to enter before the engine is ready to fit. */
export const STILL_TO_ENTER = ['oil pressure hot, 3,000 rev/min', 'compression spread, warm']

/** How the run cell brings an engine to its readings. */
const RUN_STEPS: readonly (readonly [string, readonly string[], string | null])[] = [
  ['Prime until the gauge moves; stop if it has not within 15 to 20 s.', ['Priming drive'], null],
  [
    'Look for leaks of fuel, oil and coolant before the first start.',
    ['Lamp'],
    'Extinguisher manned, isolator in reach, exhaust led outside.',
  ],
  [
    'Run at 2,000 rev/min for twenty minutes; watch temperature and pressure.',
    [],
    'Stand clear of belt and fan.',
  ],
  ['Stop, let it cool, and read the plugs.', ['Plug spanner'], null],
  ['Warm again, and enter the readings as they stand.', ['Gauge 4'], null],
  ['Count what leaves with it, and photograph it on the pallet.', [], null],
]

/** The last days: the engine on the run cell, the yes that is asked for, the shell that is offered to the trimmer. */
export function todayScenes(yard: Yard, car: Car): Scene[] {
  const { at, date } = yard.calendar
  const scene = (
    when: string,
    who: string,
    name: Press['name'],
    input: (yard: Yard) => Press['input'],
  ): Scene => ({
    at: at(when),
    play: (yard) => car.press(yard, { at: at(when), who, name, input: input(yard) }),
  })
  const stage = (key: string) => car.stage(key)
  const order = (yard: Yard) => orderNow(yard, car, CARBURETTORS).id
  return [
    ...slotScenes(yard, car, {
      who: MARA,
      claimed: 'd-5 9',
      bay: 'tarn/Bay 2',
      assembly: 'shell',
      from: 'd-1 8',
      to: 'd+4 17:30',
      stage: 'asm.engine',
    }),
    ...slotScenes(yard, car, {
      who: JORY,
      claimed: 'd-5 10',
      bay: 'bexwater/Run cell',
      assembly: 'engine',
      from: 'd-2 8',
      to: 'd+1 17:30',
      stage: 'eng.ready',
    }),
    clearScene(yard, car, 'eng.ready', {
      who: MARA,
      when: 'd-4 11',
      remark: 'We count and sign as it comes in; no need to be at the run.',
      waive: true,
    }),
    scene('d-4 16:05', MARA, 'stage.describe', () => ({
      stage: stage('fir.start'),
      hazards: ['fuel', 'rotating parts', 'battery'],
    })),
    ...RUN_STEPS.map(([text, tools, caution], i) =>
      scene(`d-4 16:${10 + i}`, JORY, 'step.add', () => ({
        stage: stage('eng.ready'),
        text,
        tools: [...tools],
        caution,
      })),
    ),
    startScene(car, 'eng.ready', at('d-2 9'), 'Wyn Pardoe'),
    {
      at: at('d-1 15'),
      play: (yard) =>
        recordChecks(
          yard,
          car,
          { key: 'eng.ready', readings: { 'cranking oil pressure, plugs out': 2.9 } },
          'Wyn Pardoe',
          at('d-1 15'),
          { leave: STILL_TO_ENTER },
        ),
    },
    {
      at: at('d-4 15:30'),
      async play(yard) {
        const [added] = await car.press(yard, {
          at: at('d-4 15:30'),
          who: JORY,
          name: 'stage.add',
          input: {
            name: 'Carburettors re-bushed and flow-matched',
            party: car.party('bexwater'),
            group: 'fuel',
            assemblies: [car.assembly('carburettors')],
            hoursLeast: 6,
            hoursLikely: 9,
            hoursMost: 14,
            safety: true,
            caution: 'Fuel on the bench: vented room.',
            changeOrder: order(yard),
            handoverTo: car.party('tarn'),
          },
        })
        if (added !== undefined) car.ids.set('stage fue.rebush', added.id)
      },
    },
    scene('d-4 15:35', JORY, 'check.add', () => ({
      stage: stage('fue.rebush'),
      type: 'reading',
      name: 'flow spread over the three',
      unit: '%',
      greatest: 2,
    })),
    scene('d-4 16', MARA, 'link.draw', () => ({
      from: stage('fue.carb'),
      to: stage('fue.rebush'),
    })),
    scene('d-4 16:05', MARA, 'link.draw', () => ({
      from: stage('fue.rebush'),
      to: stage('asm.carbs'),
    })),
    scene('d-2 16:40', INES, 'changeOrder.ask', (yard) => ({
      changeOrder: order(yard),
      text: 'Would a second-hand set do, and what would it save?',
    })),
    scene('d-1 9:15', JORY, 'changeOrder.answer', (yard) => ({
      changeOrder: order(yard),
      text: 'We looked at two sets: both worn the same way. These are the car’s own and worth the bushes.',
    })),
    scene('d-5 11', MARA, 'window.open', () => ({
      assembly: car.assembly('shell'),
      from: at('d+6 8'),
      to: at('d+16 17:30'),
    })),
    scene('d-5 11:05', MARA, 'window.open', () => ({
      assembly: car.assembly('shell'),
      from: at('d+24 8'),
      to: at('d+30 17:30'),
    })),
    ...slotScenes(yard, car, {
      who: 'Nell Osgood',
      claimed: 'd-2 11',
      bay: 'ferrier/Fitting bay',
      assembly: 'shell',
      from: 'd+5 13',
      to: 'd+7 12',
      agree: false,
    }),
    scene('d-2 11:10', 'Nell Osgood', 'note.write', (yard) => ({
      on: all(car.record(yard).slots).find(({ state }) => state === 'asked')?.id ?? '',
      sharing: 'shared',
      text: 'Two days to try the pattern board in the opening before the next screen is bent.',
    })),
    scene('d-1 9', MARA, 'condition.ask', () => ({
      stage: stage('asm.engine'),
      rule: 'predecessor',
      entity: stage('eng.ready'),
      to: car.party('bexwater'),
      text: 'The hoist is ours until the slot ends. Will the run be done by then?',
    })),
    scene('d-3 15', SORREL, 'decision.ask', () => ({
      question: 'Which seat belts?',
      text: 'The anchor points were welded in with the floors. Any of the three fits.',
      chooser: car.party('owner'),
      decideBy: date(14),
      options: [
        { text: 'Static lap and diagonal, oxblood webbing', net: 24000 },
        { text: 'Inertia reel at the front, static behind', net: 39500 },
        { text: 'Inertia reel all round', net: 61000 },
      ],
      stages: [stage('tri.fit')],
    })),
    scene('d-3 15:10', MARA, 'note.write', () => ({
      on: stage('asm.engine'),
      sharing: 'shop',
      text: 'Borrow the long spreader from Sil’s brother; ours fouls the scuttle.',
    })),
    scene('d-3 15:20', MARA, 'note.write', () => ({
      on: car.assembly('engine'),
      sharing: 'shared',
      text: 'Comes in from above, gearbox on: bring it bolted up.',
    })),
  ]
}
