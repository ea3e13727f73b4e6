import type { Car } from '../car.ts'
import { recordChecks } from '../work.ts'
import type { Scene, Yard } from '../yard.ts'

const MARA = 'Mara Ellwood'

/** The blasters log in nowhere: they ring when it is done, the lead writes it down, and confirms it once the shell is back. */
export function blastingScenes(yard: Yard, car: Car): Scene[] {
  const { at } = yard.calendar
  const rang = at('-31 Tue 10:45')
  const looked = at('-31 Tue 12:30')
  return [
    {
      at: rang,
      async play(yard) {
        await car.press(yard, {
          at: rang,
          who: MARA,
          name: 'stage.reportDone',
          input: {
            stage: car.stage('bl.shell'),
            startedAt: at('-31 Mon 8'),
            endedAt: at('-31 Tue 10:30'),
            reason: 'Hob Lane rang: blasted Monday and this morning, nobody started it here.',
            told: car.party('hob'),
          },
        })
        await recordChecks(yard, car, { key: 'bl.shell' }, MARA, rang, { told: 'hob' })
      },
    },
    {
      at: looked,
      play: (yard) =>
        car.press(yard, {
          at: looked,
          who: MARA,
          name: 'stage.confirm',
          input: { stage: car.stage('bl.shell') },
        }),
    },
  ]
}
