import { describe, expect, it } from 'vitest'
import {
  anEngine,
  anId,
  aProject,
  aStage,
  at,
  engineShop,
  lead,
  project,
  theParties,
} from '../../test/builders.ts'
import type { Changed, ProjectView } from '../command/wire.ts'
import { CommandKey } from '../record/ids.ts'
import { newKey } from './new-key.ts'
import { meets, projectStateAfter, projectStateOf } from './project-state.ts'

const stage = aStage({ number: 38 })
const view: ProjectView = {
  record: project,
  view: { party: lead, role: 'manager' },
  person: anId('psn', 'ada'),
  version: 7,
  epoch: 2,
  now: at(100),
  entities: [aProject(), ...theParties(), anEngine(), stage],
  stubs: [{ kind: 'changeOrder', id: 'cho_hidden', hidden: true }],
  versions: { [stage.id]: 5 },
  people: { psn_ada: 'Ada Thackwell' },
  shops: [],
  bays: [],
  members: [],
}
const changed = (over: Partial<Changed> = {}): Changed => ({
  record: project,
  from: 7,
  to: 8,
  epoch: 2,
  entities: [{ ...stage, state: 'in work', startedAt: at(100) }],
  stubs: [],
  people: { psn_jory: 'Jory Quill' },
  doings: [{ person: anId('psn', 'jory'), party: engineShop, command: 'stage.start', at: at(100) }],
  ...over,
})

describe('what a phone holds of a project', () => {
  it('keeps versions and stubs as they were sent', () => {
    const state = projectStateOf(view)
    expect(state.record.version).toBe(7)
    expect(state.record.versions.get(stage.id)).toBe(5)
    expect(state.record.changeOrders.hidden.has('cho_hidden')).toBe(true)
  })

  it('takes a change that follows, and says who did it', () => {
    const after = projectStateAfter(projectStateOf(view), changed(), at(101))
    expect(after.record.version).toBe(8)
    expect(after.record.stages.rows.get(stage.id)?.state).toBe('in work')
    expect(after.record.versions.get(stage.id)).toBe(8)
    expect(after.people).toEqual({ psn_ada: 'Ada Thackwell', psn_jory: 'Jory Quill' })
    expect(after.doing?.doing.command).toBe('stage.start')
  })

  it('does not tell people what they did themselves', () => {
    const own = changed({
      doings: [{ person: anId('psn', 'ada'), party: lead, command: 'stage.start', at: at(100) }],
    })
    expect(projectStateAfter(projectStateOf(view), own, at(101)).doing).toBeNull()
  })

  it('drops what this view may no longer see', () => {
    const hides = changed({ entities: [], stubs: [{ kind: 'stage', id: stage.id, hidden: true }] })
    const after = projectStateAfter(projectStateOf(view), hides, at(101))
    expect(after.record.stages.rows.has(stage.id)).toBe(false)
    expect(after.record.stages.hidden.has(stage.id)).toBe(true)
  })

  it('tells a change that follows from a known one and from a loss', () => {
    const held = { version: 7, epoch: 2 }
    expect(meets(held, changed())).toBe('follows')
    expect(meets(held, changed({ from: 6, to: 7 }))).toBe('known')
    expect(meets(held, changed({ from: 8, to: 9 }))).toBe('gap')
    expect(meets(held, changed({ epoch: 3 }))).toBe('gap')
    // Fetched from an earlier version than is held by now: it holds all of it.
    expect(meets(held, changed({ from: 5, to: 9 }))).toBe('follows')
  })
})

describe('a new key', () => {
  it('is a UUID version 7 that sorts by time and never comes twice', () => {
    const keys = Array.from({ length: 200 }, (_, n) => newKey(1_790_000_000_000 + n))
    expect(keys.every((key) => CommandKey.safeParse(key).success)).toBe(true)
    expect(keys.toSorted()).toEqual(keys)
    expect(new Set(Array.from({ length: 1000 }, () => newKey(1_790_000_000_000))).size).toBe(1000)
    expect(Number.parseInt(newKey(1_790_000_000_123).replaceAll('-', '').slice(0, 12), 16)).toBe(
      1_790_000_000_123,
    )
  })
})
