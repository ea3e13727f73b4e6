import { describe, expect, it } from 'vitest'
import {
  aChangeLine,
  aChangeOrder,
  aContext,
  anActor,
  anEstimateLine,
  anId,
  aParty,
  aProject,
  aRecord,
  at,
  engineShop,
  lead,
  owner,
  trimShop,
} from '../../test/builders.ts'
import type { Actor } from '../record/actor.ts'
import type { ProjectCommand } from '../record/command.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { Minor } from '../record/scalars.ts'
import { changeOrderAnswer } from './change-order-answer.ts'
import { changeOrderAsk } from './change-order-ask.ts'
import { changeOrderDecline } from './change-order-decline.ts'
import { changeOrderRaise } from './change-order-raise.ts'
import { changeOrderRevise } from './change-order-revise.ts'
import { changeOrderSend } from './change-order-send.ts'
import { changeOrderWithdraw } from './change-order-withdraw.ts'

const engines = anActor(engineShop)
const ines = anActor(owner)
const coachworks = anActor(lead)
const press = (command: ProjectCommand, record: ProjectRecord, input: object, actor: Actor) =>
  command.apply(input, actor, record, aContext(actor))

const bushes = {
  text: 'Bush both spindles',
  quantity: 5.5,
  unit: 'h',
  unitPrice: 64_00,
  net: 352_00,
  taxRate: 2000,
}
const extra = {
  party: engineShop,
  title: 'Carburettor spindles worn',
  reason: 'found',
  bears: 'owner',
  lines: [bushes, { text: 'Jets and needles', net: 184_50, taxRate: 2000 }],
}

describe('changeOrder.raise', () => {
  const raise = (over: object = {}, actor: Actor = engines, record = aRecord()) =>
    press(changeOrderRaise, record, { ...extra, ...over }, actor)

  it('makes a draft with its lines in order, numbered in the project', () => {
    const other = aChangeOrder({ party: lead })
    expect(raise({ days: 3 }, engines, aRecord(other))).toMatchObject({
      outcome: 'changes',
      entities: [
        { kind: 'changeOrder', number: 2, state: 'draft', days: 3, text: '', sentAt: null },
        { kind: 'changeLine', position: 1, party: engineShop, quantity: 5.5, net: 352_00 },
        { kind: 'changeLine', position: 2, quantity: null, unit: null, unitPrice: null },
      ],
    })
  })

  it("counts another shop's order that this view may not see", () => {
    const record = aRecord()
    const view = {
      ...record,
      changeOrders: { rows: new Map(), hidden: new Set([anId('cho', 'hidden')]) },
    }
    expect(raise({}, engines, view)).toMatchObject({ entities: [{ number: 2 }, {}, {}] })
  })

  it("is for the party's managers", () => {
    expect(raise({}, anActor(engineShop, { role: 'hand' }))).toEqual({ outcome: 'forbidden' })
    expect(raise({}, coachworks)).toEqual({ outcome: 'forbidden' })
    expect(raise({ party: owner }, ines)).toEqual({ outcome: 'forbidden' })
  })

  it('refuses a line whose quantity times unit price is not its net price, by field', () => {
    const lines = [bushes, { ...bushes, net: 352_01 }]
    expect(raise({ lines })).toEqual({
      outcome: 'invalid',
      issues: [{ field: 'lines.1.net', message: 'quantity times unit price' }],
    })
  })

  it('rounds quantity times unit price as tax is rounded: half away from zero', () => {
    const half = { text: 'Shim', quantity: 0.5, unitPrice: 1, net: 1, taxRate: 0 }
    expect(raise({ lines: [half] })).toMatchObject({ outcome: 'changes' })
    expect(raise({ lines: [{ ...half, unitPrice: -1, net: -1 }] })).toMatchObject({
      outcome: 'changes',
    })
    const tenths = { text: 'Oil', quantity: 0.3, unitPrice: 3_00, net: 90, taxRate: 0 }
    expect(raise({ lines: [tenths] })).toMatchObject({ outcome: 'changes' })
  })

  it('refuses a unit price without a quantity, a fifth decimal, part of a penny, a sum beyond all reason', () => {
    const field = (line: object) => {
      const answer = raise({ lines: [{ ...bushes, ...line }] })
      return answer.outcome === 'invalid' ? answer.issues.map((issue) => issue.field) : answer
    }
    const { quantity: _, ...without } = bushes
    expect(raise({ lines: [without] })).toMatchObject({ issues: [{ field: 'lines.0.quantity' }] })
    expect(field({ quantity: 5.50001 })).toContain('lines.0.quantity')
    expect(field({ net: 352_00.5 })).toContain('lines.0.net')
    expect(field({ net: 100_000_000_001 })).toContain('lines.0.net')
    expect(field({ taxRate: 10_001 })).toContain('lines.0.taxRate')
  })

  it("refuses to bill the owner for a shop's own mistake", () => {
    expect(raise({ reason: 'mistake' })).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'input', field: 'bears' }],
    })
    expect(raise({ reason: 'mistake', bears: 'shop' })).toMatchObject({ outcome: 'changes' })
  })
})

describe('changeOrder.revise', () => {
  const draft = aChangeOrder({ state: 'draft', sentAt: null, title: 'Spindles' })
  const line = aChangeLine({ changeOrder: draft.id })
  const revise = (over: object, record = aRecord(draft, line), actor: Actor = engines) =>
    press(changeOrderRevise, record, { changeOrder: draft.id, ...over }, actor)

  it('changes what is said and leaves the rest', () => {
    expect(revise({ title: 'Spindles and jets', days: null })).toEqual({
      outcome: 'changes',
      entities: [{ ...draft, title: 'Spindles and jets', days: null }],
    })
  })

  it('strikes the old lines and keeps them when there are new ones', () => {
    expect(revise({ lines: [bushes] })).toMatchObject({
      entities: [
        draft,
        { id: line.id, removedAt: at(100) },
        { kind: 'changeLine', position: 1, net: 352_00, removedAt: null },
      ],
    })
  })

  it('refuses what was sent, and offers to withdraw it', () => {
    const sent = { ...draft, state: 'sent' as const }
    expect(revise({ title: 'More' }, aRecord(sent, line))).toMatchObject({
      conditions: [{ rule: 'state', is: 'sent', clearedWith: { command: 'changeOrder.withdraw' } }],
    })
  })

  it('never touches an approved one', () => {
    const approved = { ...draft, state: 'approved' as const }
    expect(revise({ lines: [bushes] }, aRecord(approved, line))).toMatchObject({
      conditions: [{ rule: 'state', is: 'approved', clearedBy: [], clearedWith: null }],
    })
  })

  it("is for the party's own managers", () => {
    expect(revise({ title: 'x' }, aRecord(draft, line), coachworks)).toEqual({
      outcome: 'forbidden',
    })
  })
})

describe('changeOrder.send', () => {
  const draft = aChangeOrder({ state: 'draft', sentAt: null })
  const line = aChangeLine({ changeOrder: draft.id, sentAt: null })
  const send = (record: ProjectRecord, actor: Actor = engines) =>
    press(changeOrderSend, record, { changeOrder: draft.id }, actor)

  it('sends a draft, whose lines are then for who pays it', () => {
    expect(send(aRecord(draft, line))).toEqual({
      outcome: 'changes',
      entities: [
        { ...draft, state: 'sent', sentAt: at(100) },
        { ...line, sentAt: at(100) },
      ],
    })
  })

  it('sends one that costs nothing, so that its days are agreed', () => {
    expect(send(aRecord(draft, { ...line, net: Minor.parse(0) }))).toMatchObject({
      outcome: 'changes',
    })
  })

  it('refuses one without a line that stands', () => {
    expect(send(aRecord(draft, { ...line, removedAt: at(1) }))).toMatchObject({
      conditions: [
        { rule: 'input', field: 'lines', clearedWith: { command: 'changeOrder.revise' } },
      ],
    })
  })

  it('refuses while nobody is there to answer', () => {
    const record = aRecord(draft, line)
    const noOwner = {
      ...record,
      parties: {
        ...record.parties,
        rows: new Map([...record.parties.rows].filter(([id]) => id !== owner)),
      },
    }
    expect(send(noOwner)).toMatchObject({
      conditions: [{ field: 'owner', clearedBy: [lead], clearedWith: { command: 'party.add' } }],
    })
  })
})

describe('changeOrder.decline and changeOrder.withdraw', () => {
  const sent = aChangeOrder({ state: 'sent' })
  const record = aRecord(sent)
  const input = { changeOrder: sent.id, text: 'Leave them as they are.' }

  it("declines by the owner, who needn't prove anew who they are", () => {
    const stale = anActor(owner, { provedAt: null, proof: null })
    expect(press(changeOrderDecline, record, input, stale)).toEqual({
      outcome: 'changes',
      entities: [
        {
          ...sent,
          state: 'declined',
          answeredAt: at(100),
          answeredBy: ines.person,
          answer: 'Leave them as they are.',
        },
      ],
    })
    expect(press(changeOrderDecline, record, input, coachworks)).toEqual({ outcome: 'forbidden' })
  })

  it('withdraws by the shop that raised it, until it is answered', () => {
    expect(press(changeOrderWithdraw, record, input, engines)).toMatchObject({
      entities: [{ state: 'withdrawn', answeredBy: engines.person }],
    })
    const approved = aRecord({ ...sent, state: 'approved' as const })
    expect(press(changeOrderWithdraw, approved, input, engines)).toMatchObject({
      conditions: [{ rule: 'state', is: 'approved', needs: ['draft', 'sent'] }],
    })
    expect(press(changeOrderDecline, approved, input, ines)).toMatchObject({
      conditions: [{ rule: 'state', is: 'approved' }],
    })
  })

  it("answers for the lead's payer where a shop bills the lead", () => {
    const castings = aParty({ bills: 'lead' })
    const behind = aChangeOrder({ party: castings.id })
    const input = { changeOrder: behind.id }
    expect(press(changeOrderDecline, aRecord(castings, behind), input, coachworks)).toMatchObject({
      outcome: 'changes',
    })
    expect(press(changeOrderDecline, aRecord(castings, behind), input, ines)).toEqual({
      outcome: 'forbidden',
    })
  })
})

describe('changeOrder.ask and changeOrder.answer', () => {
  const sent = aChangeOrder()
  const record = aRecord(sent, anEstimateLine(), aProject())
  const input = { changeOrder: sent.id, text: 'Can they be saved?' }

  it('keeps question and answer as the business of the shop that raised it', () => {
    const note = { kind: 'note', on: sent.id, sharing: 'shared', business: engineShop }
    expect(press(changeOrderAsk, record, input, ines)).toMatchObject({
      entities: [{ ...note, type: 'question', party: owner, text: 'Can they be saved?' }],
    })
    expect(press(changeOrderAnswer, record, input, engines)).toMatchObject({
      entities: [{ ...note, type: 'answer', party: engineShop }],
    })
  })

  it('is asked by who pays or leads, and answered by the shop', () => {
    expect(press(changeOrderAsk, record, input, coachworks)).toMatchObject({ outcome: 'changes' })
    expect(press(changeOrderAsk, record, input, anActor(trimShop))).toEqual({
      outcome: 'forbidden',
    })
    expect(press(changeOrderAsk, record, input, engines)).toEqual({ outcome: 'forbidden' })
    expect(press(changeOrderAnswer, record, input, ines)).toEqual({ outcome: 'forbidden' })
  })

  it('refuses a question on a draft', () => {
    const draft = aRecord({ ...sent, state: 'draft' as const })
    expect(press(changeOrderAsk, draft, input, ines)).toMatchObject({
      conditions: [{ rule: 'state', is: 'draft' }],
    })
  })
})
