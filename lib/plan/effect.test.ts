import { expect, test } from 'vitest'
import {
  aLink,
  anActor,
  anEngine,
  aRecord,
  aStage,
  at,
  engineShop,
  lead,
} from '../../test/builders.ts'
import { pressed } from '../../test/press.ts'
import { stageGive } from '../build-order/stage-give.ts'
import { stageMove } from '../build-order/stage-move.ts'
import { effectOf } from './effect.ts'

const strip = aStage({ name: 'Strip the engine', hoursLikely: 8 })
const bore = aStage({ name: 'Bore the block', hoursLikely: 40 })
const paint = aStage({ name: 'Paint the block', hoursLikely: 8, assemblies: [] })
const order = aRecord(anEngine(), strip, bore, paint, aLink({ from: strip.id, to: bore.id }))

test('a stage that is moved behind another shows that it can’t start any more, and by how much the end moves', () => {
  const after = pressed(stageMove, anActor(lead), order, {
    stage: paint.id,
    after: [bore.id],
    before: [],
  })
  const effect = effectOf(order, after, [], at(0))
  expect(effect.shut).toEqual([paint.id])
  expect(effect.opened).toEqual([])
  expect(effect.moved.map(({ stage }) => stage)).toEqual([paint.id])
  expect(Date.parse(effect.endAfter ?? '')).toBeGreaterThan(Date.parse(effect.endBefore ?? ''))
})

test('what changes nothing in time says so: the same end, nothing moved', () => {
  const after = pressed(stageGive, anActor(lead), order, {
    stage: bore.id,
    party: engineShop,
    reason: 'They have the machine.',
  })
  const effect = effectOf(order, after, [], at(0))
  expect(effect.endAfter).toBe(effect.endBefore)
  expect(effect.moved).toEqual([])
})
