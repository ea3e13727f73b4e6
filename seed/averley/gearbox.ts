import { all } from '../../lib/record/table.ts'
import { plus } from '../calendar.ts'
import type { Car } from '../car.ts'
import { doneScenes } from '../work.ts'
import type { Scene, Yard } from '../yard.ts'
import { crew } from './car.ts'

const CHECK = 'layshaft end float'

/** The gearbox is built; one reading is out of limits, and both who may accept it do, each with a reason. */
export function gearboxScenes(yard: Yard, car: Car): Scene[] {
  const over = yard.calendar.at('-19 Tue 16')
  const concede = (minutes: number, who: string, reason: string): Scene => {
    const at = plus(over, minutes)
    return {
      at,
      async play(yard) {
        const check = all(car.record(yard).checks).find(
          ({ stage, name }) => stage === car.stage('gb.build') && name === CHECK,
        )
        await car.press(yard, {
          at,
          who,
          name: 'condition.concede',
          input: { stage: car.stage('gb.build'), rule: 'check', entity: check?.id ?? '', reason },
        })
      },
    }
  }
  return [
    ...doneScenes(yard, car, crew, {
      key: 'gb.build',
      when: '-20 Mon 8 > -19 Tue 16',
      readings: { [CHECK]: 0.37 },
    }),
    concede(
      3,
      'Jory Wenlock',
      'Two hundredths over. The next thrust washer is no longer made; it runs quiet and we stand by it.',
    ),
    concede(6, 'Mara Ellwood', 'Accepted as Bexwater say; written in the build book.'),
  ]
}
