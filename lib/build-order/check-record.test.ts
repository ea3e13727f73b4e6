import { describe, expect, it } from 'vitest'
import {
  aCheck,
  anActor,
  anEngine,
  aRecord,
  aStage,
  at,
  engineShop,
  lead,
  owner,
} from '../../test/builders.ts'
import { press } from '../../test/press.ts'
import type { Check } from '../record/entities/work.ts'
import { Sha256 } from '../record/scalars.ts'
import { checkRecord } from './check-record.ts'

const stage = aStage({ party: engineShop, state: 'in work', startedAt: at(1) })
const wyn = anActor(engineShop, { role: 'hand' })
const reading = (over: Partial<Check> = {}) =>
  aCheck({ stage: stage.id, type: 'reading', unit: 'bar', least: 3.1, greatest: 4.5, ...over })
const record = (check: Check, input: object, over = {}) =>
  press(checkRecord, wyn, aRecord(stage, anEngine(), check), { check: check.id, ...input }, over)
const photoOf = Sha256.parse('a'.repeat(64))

describe('check.record', () => {
  it('passes a reading on its limits, and keeps one a hair outside as out of limits', () => {
    for (const value of [3.1, 4.5, 4])
      expect(record(reading(), { value })).toMatchObject({
        entities: [{ state: 'passed', value, at: at(100), by: wyn.person }],
      })
    for (const value of [3.0999999, 4.5000001, 0, -3.2])
      expect(record(reading(), { value })).toMatchObject({
        entities: [{ state: 'out of limits', value }],
      })
  })

  it('knows no limit where none is set', () => {
    expect(record(reading({ least: null }), { value: -40 })).toMatchObject({
      entities: [{ state: 'passed' }],
    })
    expect(record(reading({ greatest: null }), { value: 900 })).toMatchObject({
      entities: [{ state: 'passed' }],
    })
  })

  it('never takes a blank for zero', () => {
    expect(record(reading({ least: 0, greatest: 1 }), {})).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'input', field: 'value' }],
    })
    expect(record(reading(), { value: null }).outcome).toBe('invalid')
    expect(record(reading(), { value: '' }).outcome).toBe('invalid')
  })

  it('keeps the first reading when it is repeated', () => {
    const amiss = reading({ state: 'out of limits', value: 4.9, at: at(50) })
    expect(record(amiss, { value: 4.2 })).toMatchObject({
      entities: [{ state: 'passed', value: 4.2, firstValue: 4.9 }],
    })
    const twice = reading({ state: 'passed', value: 4.2, firstValue: 4.9 })
    expect(record(twice, { value: 4.3 })).toMatchObject({
      entities: [{ value: 4.3, firstValue: 4.9 }],
    })
  })

  it('passes a tick when it is made, and takes no number for it', () => {
    const tick = aCheck({ stage: stage.id })
    expect(record(tick, { text: 'All eight.' })).toMatchObject({
      entities: [{ state: 'passed', text: 'All eight.', value: null }],
    })
    expect(record(tick, { value: 1 })).toMatchObject({ conditions: [{ rule: 'input' }] })
  })

  it('counts a photo once its bytes have arrived', () => {
    const photo = aCheck({ stage: stage.id, type: 'photo' })
    expect(record(photo, {})).toMatchObject({ conditions: [{ rule: 'input', field: 'files' }] })
    expect(record(photo, { files: [photoOf] })).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'file', sha256: photoOf }],
    })
    expect(record(photo, { files: [photoOf] }, { files: new Set([photoOf]) })).toMatchObject({
      entities: [{ state: 'passed', files: [photoOf] }],
    })
    expect(checkRecord.needs({ check: photo.id, files: [photoOf] }, aRecord()).files).toEqual([
      photoOf,
    ])
  })

  it('is refused before the work begins and after it is signed off', () => {
    const check = reading()
    for (const state of ['planned', 'signed off', 'reopened'] as const)
      expect(
        press(checkRecord, wyn, aRecord({ ...stage, state }, check), { check: check.id, value: 4 }),
      ).toMatchObject({ conditions: [{ rule: 'state', is: state }] })
  })

  it('is recorded by the party of the stage, or told to the lead by phone', () => {
    const check = reading()
    const all = aRecord(stage, check)
    const input = { check: check.id, value: 4 }
    expect(press(checkRecord, anActor(owner), all, input).outcome).toBe('forbidden')
    expect(press(checkRecord, anActor(lead), all, input).outcome).toBe('forbidden')
    expect(press(checkRecord, anActor(lead), all, { ...input, told: engineShop })).toMatchObject({
      entities: [
        { state: 'passed', by: null },
        { kind: 'told', party: engineShop },
      ],
    })
  })
})
