import { describe, expect, it } from 'vitest'
import {
  aChangeLine,
  aChangeOrder,
  aContext,
  anActor,
  anEstimateLine,
  aParty,
  aProject,
  aRecord,
  at,
  engineShop,
  lead,
  owner,
  project,
  trimShop,
} from '../../test/builders.ts'
import type { Actor } from '../record/actor.ts'
import type { Context } from '../record/command.ts'
import type { ChangeOrder } from '../record/entities/money.ts'
import { type ProjectRecord, projectAfter } from '../record/project-record.ts'
import { Minor } from '../record/scalars.ts'
import { sha256Hex } from '../record/sha256.ts'
import { type Authority, shownForApproval, shownText } from './approval.ts'
import { changeOrderApprove } from './change-order-approve.ts'
import { changeOrderRevise } from './change-order-revise.ts'

const ines = anActor(owner)
const coachworks = anActor(lead)
const sum = (net: number, tax: number) => ({ net, tax, gross: net + tax })

const carburettors = aChangeOrder({ number: 3, title: 'Bush the carburettor spindles', days: 2 })
const lines = [
  aChangeLine({ changeOrder: carburettors.id, net: Minor.parse(352_00) }),
  aChangeLine({ changeOrder: carburettors.id, position: 2, net: Minor.parse(282_00) }),
]
const estimates = [
  anEstimateLine({ net: Minor.parse(10_000_00) }),
  anEstimateLine({ party: engineShop, net: Minor.parse(4_000_00), text: 'Rebuild' }),
  anEstimateLine({
    party: engineShop,
    position: 2,
    net: Minor.parse(800_00),
    text: 'Carburettors',
    type: 'allowance',
  }),
]
const waiting = aRecord(carburettors, lines, estimates)

const hashOf = (record: ProjectRecord, order: ChangeOrder, authority: Authority = 'payer') =>
  shownText(shownForApproval(record, order.id, authority)).hash
const approve = (
  record: ProjectRecord,
  over: { hash?: string; actor?: Actor; context?: Partial<Context>; order?: ChangeOrder } = {},
) => {
  const order = over.order ?? carburettors
  const actor = over.actor ?? ines
  const input = { changeOrder: order.id, shownHash: over.hash ?? hashOf(record, order) }
  return changeOrderApprove.apply(input, actor, record, aContext(actor, over.context))
}

describe('what is shown before a yes', () => {
  it('has lines with tax, totals of shop and project before and after, and per cent over', () => {
    expect(shownForApproval(waiting, carburettors.id)).toMatchObject({
      currency: 'GBP',
      lines: [
        { net: 352_00, tax: 70_40 },
        { net: 282_00, tax: 56_40 },
      ],
      billed: sum(634_00, 126_80),
      party: {
        first: sum(4_800_00, 960_00),
        before: sum(4_800_00, 960_00),
        after: sum(5_434_00, 1_086_80),
        overBefore: 0,
        overAfter: 1321,
      },
      project: {
        before: sum(14_800_00, 2_960_00),
        after: sum(15_434_00, 3_086_80),
        overAfter: 428,
        openAllowances: [{ party: 'Bexwater Engines', text: 'Carburettors', net: 800_00 }],
        otherSent: [],
      },
    })
  })

  it('names the other change orders that wait for an answer', () => {
    const loom = aChangeOrder({ party: lead, number: 4, title: 'New loom' })
    const line = aChangeLine({ changeOrder: loom.id, party: lead, net: Minor.parse(100_00) })
    const draft = aChangeOrder({ party: lead, number: 5, state: 'draft' })
    const record = aRecord(carburettors, lines, estimates, loom, line, draft)
    expect(shownForApproval(record, carburettors.id).project?.otherSent).toMatchObject([
      { number: 4, title: 'New loom', price: sum(100_00, 20_00) },
    ])
  })

  it('adds nothing to the bill where the shop bears it, and still shows the price', () => {
    const own = { ...carburettors, bears: 'shop' as const }
    expect(shownForApproval(aRecord(own, lines, estimates), own.id)).toMatchObject({
      price: sum(634_00, 126_80),
      billed: sum(0, 0),
      party: { after: sum(4_800_00, 960_00), overAfter: 0 },
    })
  })

  it('is the same text on every device, whatever order the lines came in', () => {
    const other = aRecord(estimates, lines.toReversed(), carburettors)
    expect(hashOf(other, carburettors)).toBe(hashOf(waiting, carburettors))
  })
})

describe('changeOrder.approve', () => {
  it('keeps who said yes, when, how they proved it, and exactly what they saw', () => {
    const { text, hash } = shownText(shownForApproval(waiting, carburettors.id))
    expect(approve(waiting)).toEqual({
      outcome: 'changes',
      entities: [
        {
          ...carburettors,
          state: 'approved',
          answeredAt: at(100),
          answeredBy: ines.person,
          proof: 'password',
          shown: text,
          shownHash: hash,
        },
      ],
    })
    expect(sha256Hex(text)).toBe(hash)
    expect(JSON.parse(text)).toMatchObject({ billed: { gross: 760_80 } })
  })

  it('is never given before it was asked for, whatever a slow phone says', () => {
    const sent = { ...carburettors, sentAt: at(50) }
    const record = aRecord(sent, lines, estimates)
    const early = { happenedAt: at(49.9), now: at(51) }
    expect(approve(record, { order: sent, context: early })).toMatchObject({
      entities: [{ state: 'approved', answeredAt: at(50) }],
    })
  })

  it('refuses where a figure has changed since it was shown', () => {
    const seen = hashOf(waiting, carburettors)
    const more = anEstimateLine({ party: trimShop, net: Minor.parse(1) })
    const record = projectAfter(waiting, { version: 2, entities: [more] })
    expect(approve(record, { hash: seen })).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'shown-changed', shown: seen, now: hashOf(record, carburettors) }],
    })
  })

  it.each([
    ['never', { provedAt: null, proof: null }],
    ['eleven minutes ago', { provedAt: at(100 - 11 / 60) }],
  ])('asks for proof from who last proved who they are %s', (_when, over) => {
    const actor = anActor(owner, over)
    expect(approve(waiting, { actor })).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'proof', minutes: 10, clearedBy: [owner] }],
    })
  })

  it('takes a proof of ten minutes ago, by the server clock and not by the phone', () => {
    const actor = anActor(owner, { provedAt: at(100 - 10 / 60) })
    expect(approve(waiting, { actor })).toMatchObject({ outcome: 'changes' })
    const late = { happenedAt: at(100), now: at(101) }
    expect(approve(waiting, { actor, context: late })).toMatchObject({
      conditions: [{ rule: 'proof' }],
    })
  })

  it('is never changed afterwards, nor given twice', () => {
    const answer = approve(waiting)
    const entities = answer.outcome === 'changes' ? answer.entities : []
    const after = projectAfter(waiting, { version: 2, entities })
    expect(approve(after)).toMatchObject({ conditions: [{ rule: 'state', is: 'approved' }] })
    const revise = { changeOrder: carburettors.id, lines: [] }
    const engines = anActor(engineShop)
    expect(changeOrderRevise.apply(revise, engines, after, aContext(engines))).toMatchObject({
      conditions: [{ rule: 'state', is: 'approved' }],
    })
  })

  it("is the payer's: no other shop, no hand, no observer says yes", () => {
    for (const actor of [
      coachworks,
      anActor(engineShop),
      anActor(trimShop),
      anActor(owner, { role: 'observer' }),
    ])
      expect(approve(waiting, { actor })).toEqual({ outcome: 'forbidden' })
  })

  it('is given by the lead where the shop bills the lead', () => {
    const castings = aParty({ bills: 'lead', name: 'Sallow Street Castings' })
    const liners = aChangeOrder({ party: castings.id })
    const line = aChangeLine({ changeOrder: liners.id, party: castings.id })
    const record = aRecord(castings, liners, line, estimates)
    expect(approve(record, { order: liners, actor: coachworks })).toMatchObject({
      entities: [{ state: 'approved', proof: 'password' }],
    })
    expect(approve(record, { order: liners })).toEqual({ outcome: 'forbidden' })
    expect(approve(record, { order: liners, actor: anActor(lead, { role: 'hand' }) })).toEqual({
      outcome: 'forbidden',
    })
  })
})

describe('standing consent', () => {
  // Up to 250.00 each and 1,000.00 together, tax included.
  const consent = aProject({
    id: project,
    standingConsentEach: Minor.parse(250_00),
    standingConsentTotal: Minor.parse(1_000_00),
  })
  const extra = (net: number, over: Partial<ChangeOrder> = {}) => {
    const order = aChangeOrder({ party: lead, ...over })
    return {
      order,
      entities: [order, aChangeLine({ changeOrder: order.id, party: lead, net: Minor.parse(net) })],
    }
  }
  const used = (net: number) =>
    extra(net, { state: 'approved', proof: 'standing consent' }).entities
  const byLead = (record: ProjectRecord, order: ChangeOrder) =>
    approve(record, {
      order,
      actor: coachworks,
      hash: hashOf(record, order, 'standing consent'),
    })

  it('lets the lead agree an extra of its own up to the limit, tax included', () => {
    const { order, entities } = extra(208_33)
    const record = aRecord(consent, entities)
    // 208.33 and 41.67 tax are 250.00 to the penny.
    expect(byLead(record, order)).toMatchObject({
      entities: [{ state: 'approved', proof: 'standing consent', answeredBy: coachworks.person }],
    })
  })

  it('refuses a penny over the limit each, and the owner can still say yes', () => {
    const { order, entities } = extra(208_34)
    const record = aRecord(consent, entities)
    expect(byLead(record, order)).toMatchObject({
      outcome: 'refusal',
      conditions: [
        {
          rule: 'standing-consent',
          what: 'each',
          allowed: 250_00,
          asked: 250_01,
          clearedBy: [owner],
          clearedWith: { command: 'changeOrder.approve' },
        },
      ],
    })
    expect(approve(record, { order })).toMatchObject({ outcome: 'changes' })
  })

  it('refuses what goes over the running total, and a minus gives nothing back', () => {
    const { order, entities } = extra(100_00)
    const record = aRecord(consent, used(800_00), used(-500_00), entities)
    expect(byLead(record, order)).toMatchObject({
      conditions: [{ what: 'total', allowed: 40_00, asked: 120_00 }],
    })
  })

  it("can't be used up by two at once: the second is refused", () => {
    const first = extra(200_00)
    const second = extra(200_00, { number: 2 })
    const record = aRecord(consent, used(600_00), first.entities, second.entities)
    const seen = hashOf(record, second.order, 'standing consent')
    const answer = byLead(record, first.order)
    const entities = answer.outcome === 'changes' ? answer.entities : []
    expect(entities).toHaveLength(1)
    const after = projectAfter(record, { version: 2, entities })
    const late = { order: second.order, actor: coachworks, hash: seen }
    expect(approve(after, late)).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'shown-changed' }, { rule: 'standing-consent', what: 'total' }],
    })
  })

  it('is nothing where the owner said nothing, not even for an extra without a price', () => {
    const { order, entities } = extra(0)
    expect(byLead(aRecord(entities), order)).toMatchObject({
      conditions: [{ rule: 'standing-consent', allowed: 0 }],
    })
  })

  it("doesn't reach the extras of another shop, whose prices the lead doesn't see", () => {
    const { order, entities } = extra(10_00, { party: engineShop })
    const record = aRecord(consent, entities)
    expect(byLead(record, order)).toEqual({ outcome: 'forbidden' })
  })

  it('shows what is left of it, and no other price of the project', () => {
    const { order, entities } = extra(100_00)
    const record = aRecord(consent, used(200_00), entities, estimates)
    const shown = shownForApproval(record, order.id, 'standing consent')
    expect(shown).toMatchObject({
      project: null,
      standingConsent: { each: 250_00, total: 1_000_00, usedBefore: 240_00, usedAfter: 360_00 },
    })
    expect(JSON.stringify(shown)).not.toContain('Bexwater')
  })
})
