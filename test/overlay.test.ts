import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { needsProof } from '../lib/command/needs-proof.ts'
import { fetchCommand } from '../lib/live/outbox/commands-here.ts'
import { type Pressed, projectOverlaid } from '../lib/live/outbox/overlay.ts'
import type { Queued } from '../lib/live/outbox/unsent-store.ts'
import type { ProjectState } from '../lib/live/project-state.ts'
import type { Actor } from '../lib/record/actor.ts'
import { entitiesOf } from '../lib/record/any-entity.ts'
import type { Applied, ProjectCommand } from '../lib/record/command.ts'
import { CommandKey, idsFrom } from '../lib/record/ids.ts'
import { type ProjectRecord, projectAfter } from '../lib/record/project-record.ts'
import { NoSuchEntity } from '../lib/record/table.ts'
import { viewOf } from '../lib/see/view-of.ts'
import { beginning, books, files, type Press, press, pressOn } from './any-press.ts'
import { aContext, aKey, anId, at } from './builders.ts'

/** A press that waits on a phone. */
interface Offline {
  readonly item: Queued
  readonly actor: Actor
  readonly command: ProjectCommand
}

const waiting = (own: readonly Offline[]): readonly Pressed[] =>
  own.map(({ item }) => ({ item, until: null }))

const viewOfActor = (actor: Actor) => ({
  party: actor.party ?? anId('pty', 'nobody'),
  role: actor.role,
})

function stateOf(record: ProjectRecord, actor: Actor): ProjectState {
  const view = viewOfActor(actor)
  return {
    record: viewOf(record, view),
    view,
    person: actor.person,
    people: {},
    shops: [],
    bays: [],
    members: [],
    epoch: 1,
    asOf: at(100),
    doing: null,
  }
}

function queued(record: ProjectRecord, pressed: Press, place: number): Queued | null {
  const { command, actor, input } = pressOn(record, pressed)
  if (needsProof(command.name, input)) return null
  return {
    place,
    person: actor.person,
    personName: '',
    lanes: [record.id],
    request: { name: command.name, input, key: aKey(), happenedAt: at(100) },
    pressedAt: at(100),
    files: [...files],
    path: '',
    label: '',
    where: '',
    entered: [],
    no: null,
  }
}

/** What the server makes of a press, on the record itself; null where it names what isn't there. */
function answer(
  record: ProjectRecord,
  { request }: Queued,
  actor: Actor,
  command: ProjectCommand,
): Applied | null {
  const newId = idsFrom(CommandKey.parse(request.key))
  try {
    const context = aContext(actor, { shops: books, files, newId })
    return command.apply(request.input, actor, record, context)
  } catch (error) {
    if (error instanceof NoSuchEntity) return null
    throw error
  }
}

const after = (record: ProjectRecord, applied: Applied | null): ProjectRecord =>
  projectAfter(record, {
    version: record.version + 1,
    entities: applied?.outcome === 'changes' ? applied.entities : [],
  })

const shown = (base: ProjectState, pressed: readonly Pressed[]) =>
  projectOverlaid(base, pressed, (shop) => books.get(shop))

/** All that a record holds, by id: the order in which it came to be there doesn't count. */
const contents = (record: ProjectRecord) =>
  entitiesOf(record).toSorted((a, b) => (a.id < b.id ? -1 : 1))

/** Presses of one person without signal, each on what they see by then. */
function pressedOffline(presses: readonly Press[]): readonly Offline[] {
  let own: readonly Offline[] = []
  for (const pressed of presses) {
    const { actor } = pressOn(beginning, pressed)
    const { record } = shown(stateOf(beginning, actor), waiting(own)).state
    const item = queued(record, pressed, own.length + 1)
    if (item !== null) own = [...own, { item, actor, command: pressOn(record, pressed).command }]
  }
  return own
}

/** Sends them to the server in order; what is shown on the phone, before the first answer and after each. */
function sent(own: readonly Offline[], actor: Actor) {
  let record = beginning
  let guessedAll = true
  const screens = [shown(stateOf(record, actor), waiting(own))]
  const outcomes: string[] = []
  for (const [n, { item, command }] of own.entries()) {
    const guess = shown(stateOf(record, actor), waiting([{ item, actor, command }]))
    const applied = answer(record, item, actor, command)
    record = after(record, applied)
    const guessed = guess.unsent.size > 0
    const changes = applied?.outcome === 'changes'
    outcomes.push(guessed ? 'guessed' : changes ? 'not guessed' : 'nothing')
    if (guessed) {
      const told = { name: item.request.name, actor: actor.person, input: item.request.input }
      expect({ ...told, outcome: applied?.outcome }).toEqual({ ...told, outcome: 'changes' })
      expect({ ...told, is: contents(guess.state.record) }).toEqual({
        ...told,
        is: contents(stateOf(record, actor).record),
      })
    }
    if (guessed !== changes) guessedAll = false
    screens.push(shown(stateOf(record, actor), waiting(own.slice(n + 1))))
  }
  return { screens, guessedAll, outcomes }
}

const histories = fc
  .tuple(fc.nat({ max: 10_000 }), fc.array(press, { minLength: 1, maxLength: 30 }))
  .map(([actor, presses]) => presses.map((one) => ({ ...one, actor })))

const actorOf = (presses: readonly Press[]): Actor => {
  const [first] = presses
  if (first === undefined) throw new Error('Nobody presses.')
  return pressOn(beginning, first).actor
}

// As on a phone that has pressed something of each group: their rules are here.
beforeAll(() => fetchCommand('part.want'))

describe('what is shown of presses that are not sent', () => {
  it('is what the server makes of them, or nothing; and stands still as its answers come', () => {
    fc.assert(
      fc.property(histories, (presses) => {
        const actor = actorOf(presses)
        const { screens, guessedAll } = sent(pressedOffline(presses), actor)
        const [first] = screens
        if (first === undefined || !guessedAll) return
        for (const screen of screens) {
          expect(contents(screen.state.record)).toEqual(contents(first.state.record))
        }
      }),
      { numRuns: 200 },
    )
  }, 60_000)

  it('is tried with presses that are guessed, that are not, and that stand still all along', () => {
    const outcomes = new Map<string, number>()
    const count = (what: string) => outcomes.set(what, (outcomes.get(what) ?? 0) + 1)
    for (const presses of fc.sample(histories, { numRuns: 500, seed: 7 })) {
      const played = sent(pressedOffline(presses), actorOf(presses))
      played.outcomes.forEach(count)
      const guesses = played.outcomes.filter((outcome) => outcome === 'guessed').length
      if (played.guessedAll && guesses > 1) count('several at once')
    }
    const tried = (what: string) => outcomes.get(what) ?? 0
    expect(tried('guessed')).toBeGreaterThan(50)
    expect(tried('several at once')).toBeGreaterThan(10)
    expect(tried('nothing')).toBeGreaterThan(50)
    // What the server does and this view can't tell: rare, since most of what is pressed is one's own.
    expect(tried('not guessed')).toBeGreaterThan(0)
  }, 60_000)

  it('goes once the record has the answer, whichever comes first', () => {
    const [one] = fc
      .sample(histories, { numRuns: 200, seed: 11 })
      .map((presses) => ({ own: pressedOffline(presses), actor: actorOf(presses) }))
      .filter(({ own, actor }) => shown(stateOf(beginning, actor), waiting(own)).unsent.size > 0)
    if (one === undefined) throw new Error('No press was guessed.')
    const { own, actor } = one
    const base = stateOf(beginning, actor)
    const answered = (to: number): readonly Pressed[] =>
      own.map(({ item }) => ({ item, until: { [beginning.id]: to } }))
    expect(shown(base, answered(base.record.version + 1)).unsent.size).toBeGreaterThan(0)
    expect(shown(base, answered(base.record.version)).unsent.size).toBe(0)
    expect(shown(base, answered(base.record.version)).state).toBe(base)
  })

  it('is never another person’s', () => {
    const [presses] = fc.sample(histories, { numRuns: 1, seed: 3 })
    if (presses === undefined) throw new Error('Nobody presses.')
    const own = pressedOffline(presses)
    const base = { ...stateOf(beginning, actorOf(presses)), person: anId('psn', 'somebodyelse') }
    expect(shown(base, waiting(own)).state).toBe(base)
  })
})
