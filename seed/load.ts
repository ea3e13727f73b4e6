import type { Instant } from '../lib/record/scalars.ts'
import { day } from '../lib/words/dates.ts'
import { averley } from './averley/averley.ts'
import { ZONE } from './calendar.ts'
import { corrie } from './corrie/corrie.ts'
import { dunmore } from './dunmore/dunmore.ts'
import type { LoadDemonstration } from './seam.ts'
import { bringPeople, shopScenes } from './shops.ts'
import { openYard, type Scene } from './yard.ts'

/** How many scenes are played between two words on how far it is. */
const TELL_EVERY = 10

/**
 * Plays eight months of three cars, press by press in the order in which they happened, up to this morning.
 * @throws where a press is refused, with the press and its conditions
 */
export const loadDemonstration: LoadDemonstration = async (stage) => {
  const yard = openYard(stage)
  stage.progress(0, 1, 'Everybody comes in')
  await bringPeople(stage, yard)
  const scenes = inOrder([...shopScenes(yard), ...averley(yard), ...dunmore(yard), ...corrie(yard)])
  for (const [played, { at, play }] of scenes.entries()) {
    if (played % TELL_EVERY === 0) stage.progress(played, scenes.length, `It is ${dayOf(at)}.`)
    await play(yard)
  }
  stage.progress(scenes.length, scenes.length, 'All is played')
}

/** As its own clocks have it: `Fri 28 Aug`. */
const dayOf = (at: Instant): string => day(at, { locale: 'en-GB', timeZone: ZONE, now: at })

/** By their time; those of one moment as they were written. */
const inOrder = (scenes: readonly Scene[]): Scene[] =>
  scenes.toSorted((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0))
