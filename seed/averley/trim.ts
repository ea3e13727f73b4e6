import type { Car } from '../car.ts'
import { clearScene, doneScenes, recordChecks, slotScenes, startScene } from '../work.ts'
import type { Scene, Yard } from '../yard.ts'
import { crew } from './car.ts'

const SORREL = 'Sorrel Penn'
const INES = 'Ines Halloran'

/**
 * The samples are agreed, the cards made from them; then a hide of another dye lot comes. The samples are reopened and signed
 * again, so that the cards stand in doubt until somebody has laid one beside the other.
 */
export function trimScenes(yard: Yard, car: Car): Scene[] {
  const { at } = yard.calendar
  const reopened = at('-4 Wed 10')
  return [
    ...doneScenes(yard, car, crew, { key: 'tri.sample', when: '-30 Thu 10 > -30 Thu 12' }),
    clearScene(yard, car, 'tri.sample', {
      who: INES,
      when: '-30 Fri 16',
      remark: 'The smooth hide, oxblood.',
    }),
    {
      at: reopened,
      play: (yard) =>
        car.press(yard, {
          at: reopened,
          who: SORREL,
          name: 'stage.reopen',
          input: {
            stage: car.stage('tri.sample'),
            reason: 'The hide’s dye lot has changed: the last six hides are a shade browner.',
          },
        }),
    },
    ...doneScenes(yard, car, crew, { key: 'tri.sample', when: '-4 Thu 9 > -4 Thu 11' }),
    clearScene(yard, car, 'tri.sample', {
      who: INES,
      when: '-4 Fri 16',
      remark: 'The new lot, if the seats are all of it.',
    }),
    ...slotScenes(yard, car, {
      who: SORREL,
      claimed: '-4 Fri 9',
      bay: 'thistle/Trim bay',
      assembly: 'seats',
      from: '-3 Mon 8',
      to: 'd+5 17:30',
      stage: 'tri.seats',
    }),
    startScene(car, 'tri.seats', at('-3 Mon 9'), SORREL),
    {
      at: at('d-3 16'),
      play: (yard) =>
        recordChecks(yard, car, { key: 'tri.seats' }, SORREL, at('d-3 16'), {
          leave: ['hide lot numbers'],
        }),
    },
  ]
}
