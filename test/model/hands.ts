import type { ProjectRecord } from '../../lib/record/project-record.ts'
import { all } from '../../lib/record/table.ts'
import type { Played, Press } from './world.ts'

type Work = 'began' | 'went on' | 'ended' | 'reopened'
interface Hand {
  readonly work: Work
  readonly person: string | null
}

const works: { readonly [name: string]: Work } = {
  'stage.start': 'began',
  'stage.resume': 'went on',
  'stage.end': 'ended',
  'stage.reportDone': 'ended',
  'stage.reopen': 'reopened',
}

/** What a press says of whose work a stage is: nothing where it was told by phone. */
function handOf({ name, input, actor }: Press): Hand | null {
  const work = name === 'stage.signOff' && input.end !== undefined ? 'ended' : works[name]
  if (work === undefined) return null
  const person = work === 'reopened' || input.told !== undefined ? null : actor.person
  return { work, person }
}

/** A mistaken press is nobody's work: the last end, or all since the stage was last reopened. */
function withoutLast(hands: readonly Hand[], was: string | undefined): readonly Hand[] {
  if (was === 'ended') {
    const last = hands.findLastIndex(({ work }) => work === 'ended')
    return hands.filter((_, i) => i !== last)
  }
  return was === 'in work'
    ? hands.slice(0, hands.findLastIndex(({ work }) => work === 'reopened') + 1)
    : hands
}

/** Writes down who did which work, press by press, and says where somebody's own work is cleared by themselves. */
export function openHands(): (played: Played) => string[] {
  const hands = new Map<string, readonly Hand[]>()
  const didIt = (stage: string, person: string | null) =>
    person !== null && (hands.get(stage) ?? []).some((hand) => hand.person === person)

  function enter(press: Press, was: ProjectRecord | undefined): void {
    const stage = String(press.input.stage)
    const known = hands.get(stage) ?? []
    const hand = handOf(press)
    // An end that stands is only said again by a sign-off.
    const state = was?.stages.rows.get(stage)?.state
    if (hand !== null && !(press.name === 'stage.signOff' && state === 'ended'))
      hands.set(stage, [...known, hand])
    if (press.name === 'stage.takeBack') hands.set(stage, withoutLast(known, state))
  }

  return ({ press, before, after, outcome }) => {
    const record = after.projects.get(press.record)
    if (outcome.outcome !== 'changes' || record === undefined) return []
    enter(press, before.projects.get(press.record))
    return [
      ...all(record.holds)
        .filter(({ stage, clearedAt, clearedBy }) => clearedAt !== null && didIt(stage, clearedBy))
        .map(({ id }) => `${press.name}: ${id} is cleared by who did the work`),
      ...all(record.signOffs)
        .filter(({ type, withdrawnAt }) => type === 'countersign' && withdrawnAt === null)
        .filter(({ stage, person }) => didIt(stage, person))
        .map(({ id }) => `${press.name}: ${id} is a countersign of one’s own work`),
    ]
  }
}
