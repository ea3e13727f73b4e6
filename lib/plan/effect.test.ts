import { expect, test } from 'vitest'
import { aLink, anEngine, aRecord, aStage, at, engineShop } from '../../test/builders.ts'
import { effectOf } from './effect.ts'

const strip = aStage({ name: 'Strip the engine', hoursLikely: 8 })
const bore = aStage({ name: 'Bore the block', hoursLikely: 40 })
const paint = aStage({ name: 'Paint the block', hoursLikely: 8, assemblies: [] })
const link = aLink({ from: strip.id, to: bore.id })
const order = aRecord(anEngine(), strip, bore, paint, link)

test('a stage that is moved behind another shows that it can’t start any more, and by how much the end moves', () => {
  const behind = aLink({ from: bore.id, to: paint.id })
  const effect = effectOf(order, aRecord(anEngine(), strip, bore, paint, link, behind), [], at(0))
  expect(effect.shut).toEqual([paint.id])
  expect(effect.opened).toEqual([])
  expect(effect.moved.map(({ stage }) => stage)).toEqual([paint.id])
  expect(Date.parse(effect.endAfter ?? '')).toBeGreaterThan(Date.parse(effect.endBefore ?? ''))
})

test('what changes nothing in time says so: the same end, nothing moved', () => {
  const given = aRecord(anEngine(), strip, { ...bore, party: engineShop }, paint, link)
  const effect = effectOf(order, given, [], at(0))
  expect(effect.endAfter).toBe(effect.endBefore)
  expect(effect.moved).toEqual([])
})
