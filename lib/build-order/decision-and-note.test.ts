import { describe, expect, it } from 'vitest'
import {
  aChangeOrder,
  aContext,
  aDecision,
  anActor,
  anId,
  aRecord,
  aStage,
  at,
  engineShop,
  lead,
  owner,
  project,
  trimShop,
} from '../../test/builders.ts'
import type { Actor } from '../record/actor.ts'
import type { ProjectCommand } from '../record/command.ts'
import type { DecisionOption } from '../record/entities/money.ts'
import type { Note } from '../record/entities/things.ts'
import { type ProjectRecord, projectAfter } from '../record/project-record.ts'
import { decisionAsk } from './decision-ask.ts'
import { decisionChoose } from './decision-choose.ts'
import { decisionWithdraw } from './decision-withdraw.ts'
import { noteWithdraw } from './note-withdraw.ts'
import { noteWrite } from './note-write.ts'

const press = (
  command: ProjectCommand,
  record: ProjectRecord,
  input: unknown,
  actor: Actor = anActor(lead),
) => command.apply(input, actor, record, aContext(actor))

describe('decision.ask', () => {
  const stage = aStage({ party: trimShop })
  const input = {
    question: 'Which leather?',
    chooser: owner,
    decideBy: '2026-04-01',
    options: [{ text: 'Oxblood', net: 12_000 }, { text: 'Tan' }],
    stages: [stage.id],
  }

  it('puts the options before the chooser, and the stage waits for the choice', () => {
    const answer = press(decisionAsk, aRecord(stage), input, anActor(trimShop))
    expect(answer).toMatchObject({
      outcome: 'changes',
      entities: [
        {
          kind: 'decision',
          party: trimShop,
          chooser: owner,
          state: 'asked',
          decideBy: '2026-04-01',
        },
        { kind: 'decisionOption', position: 1, text: 'Oxblood', net: 12_000 },
        { kind: 'decisionOption', position: 2, text: 'Tan', net: null },
        { id: stage.id },
      ],
    })
    if (answer.outcome !== 'changes') throw new Error('refused')
    const [decision, , , waiting] = answer.entities
    expect(waiting).toMatchObject({ decision: decision?.id })
  })

  it('is no question with one option, or with two alike', () => {
    const one = { ...input, options: [{ text: 'Tan' }] }
    expect(press(decisionAsk, aRecord(stage), one)).toMatchObject({
      outcome: 'invalid',
      issues: [{ field: 'options', message: 'at least two options' }],
    })
    const alike = { ...input, options: [{ text: 'Tan' }, { text: 'Tan' }] }
    expect(press(decisionAsk, aRecord(stage), alike)).toMatchObject({ outcome: 'refusal' })
  })

  it('refuses a stage that waits for another decision, unless that was withdrawn', () => {
    const other = aDecision({ party: trimShop })
    const waiting = { ...stage, decision: other.id }
    expect(press(decisionAsk, aRecord(waiting, other), input)).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'exists', entity: stage.id }],
    })
    const anew = aRecord(waiting, { ...other, state: 'withdrawn' })
    expect(press(decisionAsk, anew, input).outcome).toBe('changes')
  })

  it("keeps a shop from holding up another's stage", () => {
    expect(press(decisionAsk, aRecord(stage), input, anActor(engineShop)).outcome).toBe('forbidden')
  })
})

const decision = aDecision({ party: trimShop })
const option: DecisionOption = {
  kind: 'decisionOption',
  id: anId('opt', 'tan'),
  project,
  decision: decision.id,
  party: trimShop,
  chooser: owner,
  position: 1,
  text: 'Tan',
  net: null,
}

describe('decision.choose', () => {
  const input = { decision: decision.id, option: option.id }

  it('is the choice of the party that was asked, and of nobody for them', () => {
    const record = aRecord(decision, option)
    expect(press(decisionChoose, record, input, anActor(owner))).toMatchObject({
      outcome: 'changes',
      entities: [{ state: 'chosen', chosen: option.id, chosenAt: at(100) }],
    })
    expect(press(decisionChoose, record, input, anActor(lead)).outcome).toBe('forbidden')
  })

  it('refuses what is chosen already, and the option of another question', () => {
    const chosen = aRecord({ ...decision, state: 'chosen' }, option)
    expect(press(decisionChoose, chosen, input, anActor(owner))).toMatchObject({
      conditions: [{ rule: 'state', is: 'chosen' }],
    })
    const other = aRecord(decision, { ...option, decision: anId('dcs', 'other') })
    expect(press(decisionChoose, other, input, anActor(owner))).toMatchObject({
      conditions: [{ rule: 'input', field: 'option' }],
    })
  })

  it('is unknown to a view that may not see the question', () => {
    const record = projectAfter(aRecord(), {
      version: 2,
      entities: [],
      stubs: [{ kind: 'decision', id: decision.id, hidden: true }],
    })
    expect(press(decisionChoose, record, input, anActor(owner)).outcome).toBe('unknown')
  })
})

describe('decision.withdraw', () => {
  const input = { decision: decision.id, reason: 'asked the wrong question' }

  it('takes a question back, by who asked it or the lead', () => {
    const record = aRecord(decision)
    for (const by of [trimShop, lead]) {
      expect(press(decisionWithdraw, record, input, anActor(by))).toMatchObject({
        outcome: 'changes',
        entities: [{ state: 'withdrawn', reason: input.reason }],
      })
    }
    expect(press(decisionWithdraw, record, input, anActor(owner)).outcome).toBe('forbidden')
  })

  it('takes a mistaken choice back, until work rests on it', () => {
    const chosen = { ...decision, state: 'chosen' as const }
    const stage = aStage({ decision: decision.id })
    const by = anActor(owner)
    expect(press(decisionWithdraw, aRecord(chosen, stage), input, by).outcome).toBe('changes')
    const begun = aRecord(chosen, { ...stage, state: 'in work' })
    expect(press(decisionWithdraw, begun, input, by)).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'state', entity: stage.id, is: 'in work' }],
    })
  })
})

describe('note.write', () => {
  const stage = aStage()
  const order = aChangeOrder({ party: engineShop })
  const record = aRecord(stage, order, decision)
  const hand = anActor(engineShop, { role: 'hand' })

  it('is shared with all on a stage, or private to the shop', () => {
    for (const sharing of ['shared', 'shop'] as const) {
      const input = { on: stage.id, text: 'Rust behind the sill', sharing }
      expect(press(noteWrite, record, input, hand)).toMatchObject({
        outcome: 'changes',
        entities: [{ kind: 'note', type: 'note', party: engineShop, business: null, ...input }],
      })
    }
  })

  it('stays the business of the party whose change order or decision it speaks of', () => {
    const text = 'Dear'
    expect(press(noteWrite, record, { on: order.id, text, sharing: 'shared' })).toMatchObject({
      entities: [{ business: engineShop }],
    })
    expect(press(noteWrite, record, { on: decision.id, text, sharing: 'shared' })).toMatchObject({
      entities: [{ business: trimShop }],
    })
  })

  it('never answers a private note for all to read', () => {
    const answer = press(noteWrite, record, { on: stage.id, text: 'Ours', sharing: 'shop' }, hand)
    const kept = projectAfter(record, {
      version: 2,
      entities: answer.outcome === 'changes' ? answer.entities : [],
    })
    const note = [...kept.notes.rows.keys()][0]
    const input = { on: note, text: 'So it is', sharing: 'shared' }
    expect(press(noteWrite, kept, input, hand)).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'input', field: 'sharing' }],
    })
    expect(press(noteWrite, kept, { ...input, sharing: 'shop' }, hand).outcome).toBe('changes')
  })

  it('is not for observers, nor on what is not there', () => {
    const input = { on: stage.id, text: 'Seen', sharing: 'shared' }
    const observer = anActor(engineShop, { role: 'observer' })
    expect(press(noteWrite, record, input, observer).outcome).toBe('forbidden')
    expect(() => press(noteWrite, record, { ...input, on: 'stg_none' })).toThrow('stg_none')
    expect(() => press(noteWrite, record, { ...input, on: 'xyz_none' })).toThrow('xyz_none')
  })
})

describe('note.withdraw', () => {
  const note: Note = {
    kind: 'note',
    id: anId('nte', 'one'),
    project,
    on: anId('stg', 'one'),
    type: 'note',
    sharing: 'shared',
    business: null,
    text: 'Rust',
    party: engineShop,
    person: anId('psn', 'jory'),
    at: at(1),
    withdrawnAt: null,
  }
  const input = { note: note.id, reason: 'wrong sill' }

  it('is for who wrote it, or manages their party', () => {
    const writer = anActor(engineShop, { person: note.person, role: 'hand' })
    for (const actor of [writer, anActor(engineShop)]) {
      expect(press(noteWithdraw, aRecord(note), input, actor)).toEqual({
        outcome: 'changes',
        entities: [{ ...note, withdrawnAt: at(100) }],
      })
    }
    const mate = anActor(engineShop, { role: 'hand' })
    expect(press(noteWithdraw, aRecord(note), input, mate).outcome).toBe('forbidden')
    expect(press(noteWithdraw, aRecord(note), input, anActor(lead)).outcome).toBe('forbidden')
  })

  it('is done once', () => {
    const gone = aRecord({ ...note, withdrawnAt: at(2) })
    expect(press(noteWithdraw, gone, input, anActor(engineShop))).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'state', is: 'withdrawn' }],
    })
  })
})
