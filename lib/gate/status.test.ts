import { describe, expect, it } from 'vitest'
import {
  aChangeOrder,
  aDecision,
  aHandover,
  aHold,
  aLink,
  anEngine,
  anId,
  aRecord,
  aShell,
  aStage,
  at,
  engineShop,
  lead,
  project,
  shellId,
} from '../../test/builders.ts'
import type { Stage } from '../record/entities/work.ts'
import type { Entity } from '../record/entity.ts'
import { stageGate, stageStatus } from './status.ts'

const before = aStage({ assemblies: [] })
const stage = aStage()
const link = aLink({ from: before.id, to: stage.id, leastLagHours: 24 })
const status = (of: Stage, ...entities: Entity[]) =>
  stageStatus(aRecord(anEngine(), aShell(), of, ...entities), of, at(100))

describe('how a planned stage stands', () => {
  it('is ready when nothing is unmet', () => {
    expect(status(stage)).toBe('ready')
  })

  it('waits for time and for ordinary work', () => {
    expect(status(stage, before, link)).toBe('waiting')
    const done = { ...before, state: 'signed off' as const, endedAt: at(90), signedOffAt: at(90) }
    expect(status(stage, done, link)).toBe('waiting')
    expect(status({ ...stage, needsBay: true })).toBe('waiting')
  })

  it('is held by a yes or a decision, whatever else is to be done', () => {
    const order = aChangeOrder()
    const choice = aDecision()
    expect(status({ ...stage, changeOrder: order.id }, order, before, link)).toBe('held')
    expect(status({ ...stage, decision: choice.id }, choice)).toBe('held')
  })

  it('is held by a hold point once the work before it is over, and waits until then', () => {
    const hold = aHold({ stage: before.id })
    expect(status(stage, before, hold, link)).toBe('waiting')
    const over = { ...before, state: 'signed off' as const, endedAt: at(9), signedOffAt: at(9) }
    expect(status(stage, over, hold, link)).toBe('held')
  })

  it('is held by a receipt, and waits while the engine is still at the specialist', () => {
    const away = anEngine({ custodian: engineShop })
    expect(status(stage, away)).toBe('waiting')
    expect(status(stage, away, aHandover())).toBe('waiting')
    expect(status(stage, away, aHandover({ state: 'released' }))).toBe('held')
  })

  it('stands as stored once it has begun', () => {
    for (const state of [
      'in work',
      'paused',
      'ended',
      'signed off',
      'in doubt',
      'reopened',
    ] as const)
      expect(status({ ...stage, state })).toBe(state)
  })
})

describe('the card of a stage', () => {
  it('counts what is met beside what is not', () => {
    const done = { ...before, state: 'signed off' as const, endedAt: at(90), signedOffAt: at(90) }
    const record = aRecord(anEngine({ custodian: engineShop }), stage, done, link)
    const gate = stageGate(record, stage, at(100))
    expect(gate.items.map(({ rule, is }) => [rule, is])).toEqual([
      ['predecessor', 'met'],
      ['least-lag', 'unmet'],
      ['custody', 'unmet'],
      ['exclusive-use', 'met'],
    ])
    expect(gate.conditions).toHaveLength(2)
  })

  it('shows a concession where it stands, with its reason', () => {
    const done = { ...before, state: 'signed off' as const, endedAt: at(90), signedOffAt: at(90) }
    const conceded = {
      kind: 'concession' as const,
      id: anId('con', 'cure'),
      project,
      stage: stage.id,
      rule: 'least-lag',
      entity: link.id,
      reason: 'Touch dry, nothing leans on it.',
      file: null,
      needs: [lead],
      parties: [lead],
      person: anId('psn', 'ada'),
      at: at(91),
      withdrawnAt: null,
    }
    const gate = stageGate(aRecord(anEngine(), stage, done, link, conceded), stage, at(100))
    expect(gate.status).toBe('ready')
    expect(gate.items[1]).toMatchObject({ is: 'conceded', concession: { reason: conceded.reason } })
  })

  it('asks nothing more of work that has begun', () => {
    const begun = { ...stage, state: 'in work' as const, assemblies: [shellId] }
    expect(stageGate(aRecord(aShell({ custodian: engineShop }), begun), begun, at(100))).toEqual({
      status: 'in work',
      items: [],
      conditions: [],
    })
  })
})
