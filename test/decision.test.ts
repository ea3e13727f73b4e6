import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { startConditions } from '../lib/gate/start.ts'
import type { Actor, View } from '../lib/record/actor.ts'
import { findEntity } from '../lib/record/any-entity.ts'
import type { Applied, Context, ProjectCommand } from '../lib/record/command.ts'
import type { Condition, Json } from '../lib/record/condition.ts'
import type { Entity } from '../lib/record/entity.ts'
import { idsFrom } from '../lib/record/ids.ts'
import { type ProjectRecord, projectAfter } from '../lib/record/project-record.ts'
import { NoSuchEntity } from '../lib/record/table.ts'
import { isSeen, seeAs } from '../lib/see/see.ts'
import { seeConditions } from '../lib/see/see-conditions.ts'
import { viewOf } from '../lib/see/view-of.ts'
import { viewerOf } from '../lib/see/viewer.ts'
import { beginning, books, files, type Press, press, pressOn } from './any-press.ts'
import {
  aChangeOrder,
  aContext,
  aKey,
  aLink,
  anId,
  aPart,
  aRecord,
  aStage,
  at,
  trimShop,
} from './builders.ts'
import { projectSamples } from './see-cast.ts'

type Answer = Applied | { readonly outcome: 'missing'; readonly entity: string }
function answer(
  command: ProjectCommand,
  input: Json,
  record: ProjectRecord,
  context: Context,
): Answer {
  try {
    return command.apply(input, context.actor, record, context)
  } catch (error) {
    if (error instanceof NoSuchEntity) return { outcome: 'missing', entity: error.entity }
    throw error
  }
}

/** What a person may know of an answer to the record's own decision. */
function asSeen(actor: Actor, after: ProjectRecord, entities: readonly Entity[]): Entity[] {
  const view = { party: actor.party ?? anId('pty', 'nobody'), role: actor.role }
  const viewer = viewerOf(view, after)
  return entities.map((entity) => seeAs(viewer, entity)).filter(isSeen)
}

/** Presses one button on the record and on the presser's view of it. Gives the record after it. */
function pressBoth(record: ProjectRecord, pressed: Press) {
  const { command, actor, party, input } = pressOn(record, pressed)
  const view = { party, role: actor.role }
  const seen = viewOf(record, view)
  const key = aKey()
  const context = (): Context => aContext(actor, { shops: books, files, newId: idsFrom(key) })
  const onRecord = answer(command, input, record, context())
  const onView = answer(command, input, seen, context())
  const told = { command: command.name, actor: actor.person, input }
  const version = record.version + 1
  const after =
    onRecord.outcome === 'changes'
      ? projectAfter(record, { version, entities: onRecord.entities })
      : record
  if (onView.outcome === 'unknown') return { after, onView, onRecord }
  if (onView.outcome === 'missing') {
    // What the view has no trace of: the door would say the same of what is hidden as of what isn't there.
    const there = findEntity(record, onView.entity)
    const hidden = there === undefined || !isSeen(seeAs(viewerOf(view, record), there))
    expect({ ...told, hidden }).toEqual({ ...told, hidden: true })
    return { after, onView, onRecord }
  }
  expect({ ...told, outcome: onView.outcome }).toEqual({ ...told, outcome: onRecord.outcome })
  if (onView.outcome === 'changes' && onRecord.outcome === 'changes') {
    expect({ ...told, made: asSeen(actor, after, onView.entities) }).toEqual({
      ...told,
      made: asSeen(actor, after, onRecord.entities),
    })
  }
  if (onView.outcome === 'refusal' && onRecord.outcome === 'refusal') {
    // A root that lies behind what the view may not see is named as far up as it sees: see below.
    const viewer = viewerOf(view, record)
    const far = onRecord.conditions.map(({ root }) => {
      const there = findEntity(record, root)
      return there !== undefined && !isSeen(seeAs(viewer, there))
    })
    const known = (conditions: readonly Condition[]) =>
      seeConditions(view, record, conditions).map((condition, i) =>
        far[i] === true ? { ...condition, root: 'far' } : condition,
      )
    // What a phone names in its own input it may say; it has nothing hidden to say more of.
    expect({ ...told, conditions: known(onView.conditions) }).toEqual({
      ...told,
      conditions: known(onRecord.conditions),
    })
  }
  return { after, onView, onRecord }
}

describe('a decision on a view', () => {
  it('equals the one on the record, or is unknown', () => {
    fc.assert(
      fc.property(fc.array(press, { minLength: 1, maxLength: 40 }), (presses) => {
        presses.reduce((record, next) => pressBoth(record, next).after, beginning)
      }),
      { numRuns: 400 },
    )
  }, 60_000)

  it('is tried with presses that do something, that are refused, and that meet what is hidden', () => {
    const outcomes = new Map<string, number>()
    const sample = fc.sample(fc.array(press, { minLength: 40, maxLength: 40 }), {
      numRuns: 40,
      seed: 7,
    })
    for (const presses of sample) {
      presses.reduce((record, next) => {
        const { after, onView } = pressBoth(record, next)
        outcomes.set(onView.outcome, (outcomes.get(onView.outcome) ?? 0) + 1)
        return after
      }, beginning)
    }
    for (const outcome of ['changes', 'refusal', 'forbidden', 'unknown', 'missing']) {
      expect([outcome, outcomes.get(outcome) ?? 0]).toEqual([outcome, expect.any(Number)])
      expect(outcomes.get(outcome) ?? 0).toBeGreaterThan(5)
    }
  })

  it('differs in how far up a root is named, where a yes that the view may not see is behind a part two steps up', () => {
    const order = aChangeOrder({ state: 'sent' })
    const brought = aStage({ changeOrder: order.id, assemblies: [] })
    const before = aStage({ assemblies: [] })
    const wanted = aPart({ stages: [before.id, brought.id] })
    const after = aStage({ assemblies: [], party: trimShop })
    const link = aLink({ from: before.id, to: after.id })
    const record = aRecord(order, brought, before, wanted, after, link)
    const view: View = { party: trimShop, role: 'manager' }
    const known = (from: ProjectRecord) =>
      seeConditions(view, record, startConditions(from, after, at(100)))
    const root = { ...known(record)[0], root: wanted.id }
    expect(known(record)).toMatchObject([{ rule: 'predecessor', root: before.id }])
    expect(known(viewOf(record, view))).toEqual([root])
  })

  it('begins with every sample in the record', () => {
    expect(projectSamples.every(([, { id }]) => findEntity(beginning, id) !== undefined)).toBe(true)
  })
})
