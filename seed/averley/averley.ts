import { openingScenes } from '../car.ts'
import type { Scene, Yard } from '../yard.ts'
import { blastingScenes } from './blasting.ts'
import { averleyCar } from './car.ts'
import { coatingScenes } from './coating.ts'
import { gearboxScenes } from './gearbox.ts'
import { handoverScenes } from './handovers.ts'
import { historyScenes } from './history.ts'
import { moneyScenes } from './money.ts'
import { averleyPartScenes } from './parts.ts'
import { todayScenes } from './today.ts'
import { trimScenes } from './trim.ts'

/** The main car: eight months of it, up to the morning on which the engine is nearly ready. */
export function averley(yard: Yard): Scene[] {
  const car = averleyCar()
  return [
    ...openingScenes(yard, car),
    ...moneyScenes(yard, car),
    ...historyScenes(yard, car),
    ...blastingScenes(yard, car),
    ...gearboxScenes(yard, car),
    ...handoverScenes(yard, car),
    ...averleyPartScenes(yard, car),
    ...trimScenes(yard, car),
    ...coatingScenes(yard, car),
    ...todayScenes(yard, car),
  ]
}
