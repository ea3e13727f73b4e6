import { describe, expect, it } from 'vitest'
import {
  aContext,
  anActor,
  anId,
  aPart,
  aParty,
  aRecord,
  aStage,
  at,
  engineShop,
  lead,
  owner,
  trimShop,
} from '../../test/builders.ts'
import type { Actor } from '../record/actor.ts'
import type { ProjectCommand } from '../record/command.ts'
import { type ProjectRecord, projectAfter } from '../record/project-record.ts'
import { all } from '../record/table.ts'
import { partArrive } from './part-arrive.ts'
import { partInspect } from './part-inspect.ts'
import { partOrder } from './part-order.ts'
import { partPromise } from './part-promise.ts'
import { partWant } from './part-want.ts'
import { partWithdraw } from './part-withdraw.ts'

const glass = anId('pty', 'glass')
const ferrier = aParty({ id: glass, name: 'Ferrier Glass', role: 'supplier' })
const supplier = anActor(glass, { role: 'supplier' })
const coachworks = anActor(lead)
const hand = anActor(lead, { role: 'hand' })
const trimmer = anActor(trimShop)
const press = (command: ProjectCommand, record: ProjectRecord, input: object, actor: Actor) =>
  command.apply(input, actor, record, aContext(actor))
const pressed = (record: ProjectRecord, command: ProjectCommand, input: object, actor: Actor) => {
  const answer = press(command, record, input, actor)
  expect(answer.outcome).toBe('changes')
  const entities = answer.outcome === 'changes' ? answer.entities : []
  return projectAfter(record, { version: record.version + 1, entities })
}

const screen = aPart({ name: 'Windscreen', supplier: glass })
const ordered = { ...screen, state: 'ordered' as const, orderedAt: at(2) }

describe('part.want', () => {
  const stage = aStage()
  const input = { party: lead, name: 'Windscreen', supplier: glass, stages: [stage.id] }

  it('says what is needed, by which stages, and who gets it', () => {
    expect(press(partWant, aRecord(ferrier, stage), input, hand)).toMatchObject({
      entities: [{ kind: 'part', ...input, state: 'wanted', number: null, price: null }],
    })
  })

  it('is for the party that gets it, or the lead', () => {
    const forTrim = { ...input, party: trimShop }
    expect(press(partWant, aRecord(ferrier, stage), forTrim, coachworks)).toMatchObject({
      outcome: 'changes',
    })
    expect(press(partWant, aRecord(ferrier, stage), input, trimmer)).toEqual({
      outcome: 'forbidden',
    })
  })

  it('refuses a stage that was removed', () => {
    const removed = { ...stage, removedAt: at(1) }
    expect(press(partWant, aRecord(ferrier, removed), input, hand)).toMatchObject({
      conditions: [{ rule: 'state', entity: stage.id, is: 'removed' }],
    })
  })
})

describe('part.order', () => {
  const record = aRecord(ferrier, screen)

  it('notes where and for how much, with the first promise', () => {
    const input = { part: screen.id, price: 640_00, promised: '2026-06-12' }
    expect(press(partOrder, record, input, coachworks)).toMatchObject({
      entities: [
        { ...screen, state: 'ordered', price: 640_00, orderedAt: at(100) },
        { kind: 'promise', part: screen.id, date: '2026-06-12', by: glass },
      ],
    })
  })

  it('takes a price from a manager of the buyer only', () => {
    const priced = { part: screen.id, price: 640_00 }
    expect(press(partOrder, record, priced, hand)).toEqual({ outcome: 'forbidden' })
    expect(press(partOrder, record, { part: screen.id }, hand)).toMatchObject({
      outcome: 'changes',
    })
    const trims = aPart({ party: trimShop })
    const told = { part: trims.id, told: trimShop }
    expect(press(partOrder, aRecord(trims), told, coachworks)).toMatchObject({
      entities: [{ state: 'ordered' }, { kind: 'told', party: trimShop }],
    })
    expect(press(partOrder, aRecord(trims), { ...told, price: 1 }, coachworks)).toEqual({
      outcome: 'forbidden',
    })
  })

  it('refuses what is ordered already', () => {
    expect(press(partOrder, aRecord(ordered), { part: screen.id }, hand)).toMatchObject({
      conditions: [{ rule: 'state', is: 'ordered', needs: ['wanted', 'rejected'] }],
    })
  })
})

describe('part.promise', () => {
  it('keeps each promise beside the ones before', () => {
    const dates = ['2026-05-01', '2026-05-20', '2026-06-15']
    const record = dates.reduce(
      (before, date) => pressed(before, partPromise, { part: screen.id, date }, supplier),
      aRecord(ferrier, ordered),
    )
    expect(all(record.promises).map(({ date, by }) => ({ date, by }))).toEqual(
      dates.map((date) => ({ date, by: glass })),
    )
  })

  it('is given by supplier or buyer, or entered by the lead for who told it by telephone', () => {
    const input = { part: screen.id, date: '2026-06-15', remark: 'The kiln is down.' }
    const ofTrim = aRecord(ferrier, { ...ordered, party: trimShop })
    expect(press(partPromise, ofTrim, input, trimmer)).toMatchObject({
      entities: [{ by: trimShop, remark: 'The kiln is down.' }],
    })
    expect(press(partPromise, ofTrim, { ...input, told: glass }, coachworks)).toMatchObject({
      entities: [
        { kind: 'promise', by: glass },
        { kind: 'told', party: glass, command: 'part.promise' },
      ],
    })
    expect(press(partPromise, ofTrim, input, coachworks)).toEqual({ outcome: 'forbidden' })
    const foreign = { ...input, told: engineShop }
    expect(press(partPromise, ofTrim, foreign, coachworks)).toEqual({ outcome: 'forbidden' })
    expect(press(partPromise, ofTrim, { ...input, told: glass }, anActor(owner))).toEqual({
      outcome: 'forbidden',
    })
  })

  it('refuses a day that is none, and a part that has come', () => {
    const record = aRecord(ferrier, { ...ordered, state: 'arrived' as const })
    const input = { part: screen.id, date: '2026-02-30' }
    expect(press(partPromise, record, input, supplier)).toMatchObject({
      outcome: 'invalid',
      issues: [{ field: 'date' }],
    })
    expect(press(partPromise, record, { ...input, date: '2026-02-28' }, supplier)).toMatchObject({
      conditions: [{ rule: 'state', is: 'arrived', needs: ['ordered'] }],
    })
  })
})

describe('part.arrive and part.inspect', () => {
  const input = { part: screen.id }
  const pass = { ...input, outcome: 'passed' }
  const reject = { ...input, outcome: 'rejected', remark: 'Scratched.' }

  it('passes what has come', () => {
    const arrived = pressed(aRecord(ferrier, ordered), partArrive, input, hand)
    expect(press(partInspect, arrived, pass, hand)).toMatchObject({
      entities: [{ state: 'inspected', inspectedAt: at(100), inspectedBy: hand.person }],
    })
  })

  it('refuses to pass what has not come, and offers its arrival', () => {
    expect(press(partInspect, aRecord(ferrier, ordered), pass, hand)).toMatchObject({
      conditions: [
        {
          rule: 'state',
          is: 'ordered',
          clearedBy: [lead],
          clearedWith: { command: 'part.arrive', input },
        },
      ],
    })
  })

  it('says what is wrong with what it rejects, and takes its replacement', () => {
    const arrived = pressed(aRecord(ferrier, ordered), partArrive, input, hand)
    expect(press(partInspect, arrived, { ...reject, remark: ' ' }, hand)).toMatchObject({
      conditions: [{ rule: 'input', field: 'remark' }],
    })
    const rejected = pressed(arrived, partInspect, reject, hand)
    const again = pressed(rejected, partArrive, input, hand)
    expect(again.parts.rows.get(screen.id)).toMatchObject({
      state: 'arrived',
      inspectedAt: null,
      inspectedBy: null,
      remark: null,
    })
  })

  it('puts a mistaken inspection right with a reason', () => {
    const rejected = aRecord(ferrier, { ...ordered, state: 'rejected' as const })
    expect(press(partInspect, rejected, pass, hand)).toMatchObject({
      conditions: [{ rule: 'input', field: 'remark' }],
    })
    const why = { ...pass, remark: 'It was the film that was scratched.' }
    expect(press(partInspect, rejected, why, hand)).toMatchObject({
      entities: [{ state: 'inspected' }],
    })
  })

  it("is the buyer's; an arrival can be told by telephone, an inspection can't", () => {
    const ofTrim = aRecord(ferrier, { ...ordered, party: trimShop })
    const told = { ...input, told: trimShop }
    expect(press(partArrive, ofTrim, input, coachworks)).toEqual({ outcome: 'forbidden' })
    expect(press(partArrive, ofTrim, told, coachworks)).toMatchObject({
      entities: [{ state: 'arrived' }, { kind: 'told' }],
    })
    expect(press(partInspect, ofTrim, pass, coachworks)).toEqual({ outcome: 'forbidden' })
    expect(press(partInspect, ofTrim, { ...pass, told: trimShop }, coachworks)).toMatchObject({
      outcome: 'invalid',
    })
  })
})

describe('part.withdraw', () => {
  it('ends the need with a reason, and nothing happens to the part after that', () => {
    const input = { part: screen.id, reason: 'The old one is sound.' }
    const record = pressed(aRecord(ferrier, ordered), partWithdraw, input, coachworks)
    expect(record.parts.rows.get(screen.id)).toEqual({
      ...ordered,
      withdrawnAt: at(100),
      remark: 'The old one is sound.',
    })
    const gone = { conditions: [{ rule: 'state', is: 'withdrawn', since: at(100) }] }
    const part = { part: screen.id }
    expect(press(partWithdraw, record, input, coachworks)).toMatchObject(gone)
    expect(press(partOrder, record, part, coachworks)).toMatchObject(gone)
    expect(press(partArrive, record, part, coachworks)).toMatchObject(gone)
    expect(press(partInspect, record, { ...part, outcome: 'passed' }, hand)).toMatchObject(gone)
    expect(press(partPromise, record, { ...part, date: '2026-06-15' }, supplier)).toMatchObject(
      gone,
    )
  })
})
