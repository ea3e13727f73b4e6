import { describe, expect, it } from 'vitest'
import {
  aChangeOrder,
  aHandover,
  aHold,
  aLink,
  anEngine,
  anId,
  aRecord,
  aStage,
  at,
  engineId,
  engineShop,
  lead,
  owner,
  trimShop,
} from '../../test/builders.ts'
import { startConditions } from '../gate/start.ts'
import { type Condition, plain } from '../record/condition.ts'
import type { Stage } from '../record/entities/work.ts'
import type { PartyId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import type { Reader } from './reader.ts'
import { isGateRule, sentence } from './sentence.ts'

const reader = (party: PartyId): Reader => ({
  view: { party, role: party === owner ? 'owner' : 'manager' },
  person: anId('psn', 'ada'),
  people: { psn_ada: 'Ada Thackwell', psn_wyn: 'Wyn Pardoe' },
  currency: 'GBP',
  locale: 'en-GB',
  timeZone: 'Europe/London',
  now: at(100),
})

function only(record: ProjectRecord, stage: Stage, rule: Condition['rule']): Condition {
  const found = startConditions(record, stage, at(100)).find((unmet) => unmet.rule === rule)
  if (found === undefined) throw new Error(`The gate does not refuse by ${rule}.`)
  return found
}

describe('a condition in words', () => {
  const stage = aStage({ number: 80, party: lead })

  it('says whose custody it is, who releases it and who receives it', () => {
    const record = aRecord([stage], [anEngine({ custodian: engineShop, since: at(-400) })])
    const custody = only(record, stage, 'custody')
    expect(sentence(custody, record, reader(lead))).toEqual({
      fact: 'Engine is in Bexwater Engines’ custody',
      detail: 'A party must answer for an assembly before it works on it.',
      since: 'Not met since Fri 13 Feb · can’t be conceded',
      who: 'Bexwater Engines releases it; you receive it.',
    })
    expect(sentence(custody, record, reader(engineShop)).who).toBe(
      'You release it; Tarn Lane Coachworks receives it.',
    )
  })

  it('says that it is already released, and to whom', () => {
    const handover = aHandover({ state: 'released', assemblies: [engineId] })
    const record = aRecord([stage, handover], [anEngine({ custodian: engineShop })])
    expect(sentence(only(record, stage, 'custody'), record, reader(lead)).who).toBe(
      'It is released to you; you receive it.',
    )
  })

  it('names the clock where only time clears it', () => {
    const before = aStage({ number: 60, name: 'Colour', state: 'signed off', endedAt: at(90) })
    const link = aLink({ from: before.id, to: stage.id, leastLagHours: 168 })
    const record = aRecord([stage, before, link], [anEngine()])
    const words = sentence(only(record, stage, 'least-lag'), record, reader(lead))
    expect(words.fact).toBe('60 · Colour is still curing')
    expect(words.since).toBe('Runs until Fri 13 Mar, 02:00')
    expect(words.who).toBe('The clock clears it.')
  })

  it('says who answers a change order, to themselves as *you*', () => {
    const order = aChangeOrder({ number: 7, title: 'Mount brackets' })
    const brought = aStage({ number: 39, changeOrder: order.id })
    const record = aRecord([brought, order], [anEngine()])
    const yes = only(record, brought, 'change-order')
    expect(sentence(yes, record, reader(lead))).toMatchObject({
      fact: 'Change order 7 has no yes',
      detail: 'Mount brackets, from Bexwater Engines.',
      who: 'Ines Halloran answers it.',
    })
    expect(sentence(yes, record, reader(owner)).who).toBe('You answer it.')
  })

  it('names the person who releases a hold, where one is named', () => {
    const before = aStage({ number: 38, name: 'Mounts', state: 'signed off', endedAt: at(1) })
    const hold = aHold({ stage: before.id, party: trimShop, person: anId('psn', 'wyn') })
    const record = aRecord(
      [stage, before, hold, aLink({ from: before.id, to: stage.id })],
      [anEngine()],
    )
    const words = sentence(only(record, stage, 'hold'), record, reader(lead))
    expect(words.fact).toBe('Hold: Seen before it is closed')
    expect(words.who).toBe('Thistle & Welt, Wyn Pardoe, releases it.')
  })

  it('says what may be done about a state, a circle, a taken bay, an old proof', () => {
    const record = aRecord([stage], [anEngine()])
    const say = (condition: Condition) => sentence(condition, record, reader(lead))
    expect(
      say({ ...plain(stage.id), rule: 'state', is: 'in work', needs: ['planned', 'reopened'] }),
    ).toMatchObject({
      fact: '80 · A stage is in work',
      detail: 'It can be done while it is planned or reopened.',
    })
    expect(say({ ...plain(stage.id), rule: 'circle', stages: [stage.id] }).detail).toContain(
      '80 · A stage',
    )
    expect(
      say({
        ...plain('bay_one'),
        rule: 'slot-taken',
        what: 'bay',
        bay: anId('bay', 'one'),
        from: at(24),
        to: at(48),
        by: null,
      }),
    ).toMatchObject({ fact: 'The bay is taken by other work' })
    expect(say({ ...plain(stage.id), rule: 'proof', minutes: 10 }).detail).toContain('10 minutes')
  })

  it('never tells what a hidden thing is', () => {
    const record = aRecord([stage], [anEngine()])
    const words = sentence({ ...plain('cho_secret'), rule: 'unknown' }, record, reader(trimShop))
    expect(words.fact).toBe('Something that you may not see stands in the way')
    expect(JSON.stringify(words)).not.toContain('cho_secret')
  })

  it('says that a condition can’t be conceded of gate rules only', () => {
    expect(isGateRule({ ...plain('x'), rule: 'unknown' })).toBe(false)
    const record = aRecord([stage], [anEngine()])
    expect(sentence({ ...plain(stage.id), rule: 'unknown' }, record, reader(lead)).since).toBe('')
  })
})
