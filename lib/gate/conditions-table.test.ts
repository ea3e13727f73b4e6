import { describe, expect, it, test } from 'vitest'
import {
  aChangeOrder,
  aCheck,
  aDecision,
  aHold,
  aLink,
  anActor,
  anAssembly,
  anId,
  aPart,
  aRecord,
  aShell,
  aStage,
  at,
  engineShop,
  fresh,
  lead,
  owner,
  project,
  shellId,
  trimShop,
} from '../../test/builders.ts'
import { press, pressed } from '../../test/press.ts'
import { aSlot } from '../../test/shop-builders.ts'
import type { AirReading, MetalReading } from '../record/entities/evidence.ts'
import type { InDate, Milestone } from '../record/entities/standing.ts'
import type { Stage } from '../record/entities/work.ts'
import type { Entity } from '../record/entity.ts'
import { CivilDate, Sha256 } from '../record/scalars.ts'
import { conditionConcede } from './condition-concede.ts'
import { startConditions } from './start.ts'
import { isEverConceded } from './who-concedes.ts'

// Every condition of DESIGN §4, asked of a stage of the engine shop at `at(100)`: unmet, met, conceded by its party and the lead, and not on safety work.

const stage = aStage({ id: anId('stg', 'asked'), party: engineShop, assemblies: [] })
const before = (over: Partial<Stage> = {}) =>
  aStage({
    id: anId('stg', 'before'),
    assemblies: [],
    state: 'signed off',
    startedAt: at(1),
    endedAt: at(90),
    signedOffAt: at(91),
    ...over,
  })
const link = aLink({ id: anId('lnk', 'it'), from: before().id, to: stage.id })
const cured: MetalReading = {
  kind: 'metalReading',
  id: fresh('mtl'),
  project,
  stage: before().id,
  celsius: 10,
  takenAt: at(90),
  at: at(90),
  by: null,
}
const engine = anAssembly({ id: anId('asm', 'one'), custodian: engineShop })
const onShell = { ...engine, host: shellId }
const reading: AirReading = {
  kind: 'airReading',
  id: fresh('air'),
  project,
  stage: stage.id,
  party: engineShop,
  bay: null,
  air: 20,
  surface: 20,
  humidity: 50,
  takenAt: at(99.8),
  at: at(99.8),
  by: null,
}
const wrench: InDate = {
  kind: 'inDate',
  id: fresh('ind'),
  project,
  party: engineShop,
  thing: 'torque wrench',
  name: 'Wrench 3',
  person: null,
  minutes: null,
  doneOn: CivilDate.parse('2025-04-01'),
  until: CivilDate.parse('2026-04-01'),
  by: anId('psn', 'jory'),
  at: at(0),
  withdrawnAt: null,
}
const payment: Milestone = {
  kind: 'milestone',
  id: fresh('mst'),
  project,
  stage: stage.id,
  party: engineShop,
  payer: owner,
  name: 'Half before the build',
  net: null,
  agreedAt: at(0),
  agreedBy: anId('psn', 'jory'),
  metAt: null,
  metBy: null,
  remark: '',
  removedAt: null,
}
const order = aChangeOrder({ id: anId('cho', 'it') })
const decision = aDecision({ id: anId('dcs', 'it') })
const part = aPart({ id: anId('prt', 'it'), stages: [stage.id], state: 'arrived' })
const witness = aHold({ id: anId('hld', 'it'), stage: before().id, point: 'witness' })
const window = { ...link, greatestLagHours: 8 }
const cure = { ...link, leastLagHours: 48 }
const asksAir = { airAgeMost: 30, humidityMost: 85 }
const slotted = { needsBay: true, assemblies: [engine.id] }
const slot = aSlot({ stage: stage.id, assembly: engine.id, from: at(99), to: at(110) })
const hot = { hazards: ['hot work' as const], precautionsAt: at(99) }

type Conceded = 'both concede it' | 'with the data sheet' | 'never'
interface Case {
  readonly rule: string
  readonly when: string
  readonly conceded: Conceded
  readonly asks?: Partial<Stage>
  readonly unmet: readonly Entity[]
  readonly met: readonly Entity[]
  /** What is asked of the stage itself once it is met. */
  readonly metAsks?: Partial<Stage>
}

const cases: readonly Case[] = [
  // 1
  {
    rule: 'predecessor',
    when: 'what comes before is not signed off',
    conceded: 'both concede it',
    unmet: [before({ state: 'ended' }), link],
    met: [before(), link],
  },
  {
    rule: 'predecessor',
    when: 'what comes before is in doubt',
    conceded: 'both concede it',
    unmet: [before({ state: 'in doubt' }), link],
    met: [before(), link],
  },
  {
    rule: 'countersign',
    when: 'a countersign is missing',
    conceded: 'both concede it',
    unmet: [before({ countersigns: [trimShop] }), link],
    met: [before(), link],
  },
  {
    rule: 'least-lag',
    when: 'the cure still runs',
    conceded: 'both concede it',
    unmet: [before(), cure],
    met: [before({ endedAt: at(52) }), cure],
  },
  {
    rule: 'least-lag',
    when: 'cold metal lengthens the cure',
    conceded: 'both concede it',
    unmet: [before(), { ...link, leastLagHours: 6, curesAt: 20 }, cured],
    met: [before(), { ...link, leastLagHours: 5, curesAt: 20 }, cured],
  },
  {
    rule: 'least-lag',
    when: 'the cure is that of safety work',
    conceded: 'never',
    unmet: [before(), { ...cure, safety: true }],
    met: [before({ endedAt: at(52) }), { ...cure, safety: true }],
  },
  // 2
  {
    rule: 'greatest-lag',
    when: 'the recoat window has run out',
    conceded: 'with the data sheet',
    unmet: [before(), window],
    met: [before({ endedAt: at(92) }), window],
  },
  // 3
  {
    rule: 'custody',
    when: 'another party has it',
    conceded: 'never',
    asks: { assemblies: [engine.id] },
    unmet: [{ ...engine, custodian: lead }],
    met: [engine],
  },
  {
    rule: 'exclusive-use',
    when: 'another stage is at it',
    conceded: 'never',
    asks: { assemblies: [engine.id] },
    unmet: [engine, aStage({ id: anId('stg', 'busy'), state: 'in work', assemblies: [engine.id] })],
    met: [engine, aStage({ id: anId('stg', 'busy'), state: 'ended', assemblies: [engine.id] })],
  },
  // 4
  {
    rule: 'must-be-fitted',
    when: 'it is off',
    conceded: 'both concede it',
    asks: { needsFitted: [engine.id] },
    unmet: [engine],
    met: [onShell, aShell()],
  },
  {
    rule: 'must-be-off',
    when: 'it is on',
    conceded: 'both concede it',
    asks: { needsOff: [engine.id] },
    unmet: [onShell, aShell()],
    met: [engine],
  },
  {
    rule: 'must-be-off',
    when: 'the tank is on and the work is hot',
    conceded: 'never',
    asks: hot,
    unmet: [{ ...onShell, holdsFuel: true }, aShell()],
    met: [{ ...engine, holdsFuel: true }],
  },
  // 5
  {
    rule: 'part',
    when: 'a part is not inspected',
    conceded: 'both concede it',
    unmet: [part],
    met: [{ ...part, state: 'inspected' }],
  },
  {
    rule: 'part',
    when: 'a part was rejected',
    conceded: 'both concede it',
    unmet: [{ ...part, state: 'rejected' }],
    met: [{ ...part, state: 'inspected' }],
  },
  // 6
  {
    rule: 'change-order',
    when: 'its change order has no yes',
    conceded: 'never',
    asks: { changeOrder: order.id },
    unmet: [order],
    met: [{ ...order, state: 'approved' }],
  },
  {
    rule: 'decision',
    when: 'the choice is not made',
    conceded: 'both concede it',
    asks: { decision: decision.id },
    unmet: [decision],
    met: [{ ...decision, state: 'chosen' }],
  },
  // 7
  {
    rule: 'hold',
    when: 'a hold point is not released',
    conceded: 'never',
    unmet: [before(), link, { ...witness, point: 'hold' }],
    met: [before(), link, { ...witness, point: 'hold', state: 'released' }],
  },
  {
    rule: 'hold',
    when: 'a hold point was invited to, and its party is silent',
    conceded: 'never',
    unmet: [
      before(),
      link,
      { ...witness, point: 'hold', state: 'invited', invitedAt: at(1), visitAt: at(60) },
    ],
    met: [before(), link, { ...witness, point: 'hold', state: 'released' }],
  },
  {
    rule: 'hold',
    when: 'the notice of a witness still runs',
    conceded: 'both concede it',
    unmet: [before(), link, { ...witness, state: 'invited', invitedAt: at(90), visitAt: at(95) }],
    met: [before(), link, { ...witness, state: 'invited', invitedAt: at(1), visitAt: at(95) }],
  },
  // 8
  {
    rule: 'air',
    when: 'the surface is 2.9 °C over the dew point',
    conceded: 'both concede it',
    asks: asksAir,
    unmet: [{ ...reading, surface: 12.16 }],
    met: [reading],
  },
  {
    rule: 'air',
    when: 'the air is over the sheet’s limit',
    conceded: 'both concede it',
    asks: asksAir,
    unmet: [{ ...reading, humidity: 85.01, surface: 30 }],
    met: [{ ...reading, humidity: 85, surface: 30 }],
  },
  {
    rule: 'air',
    when: 'the reading is half an hour old and more',
    conceded: 'never',
    asks: asksAir,
    unmet: [{ ...reading, takenAt: at(99.4) }],
    met: [{ ...reading, takenAt: at(99.5) }],
  },
  // 9
  {
    rule: 'slot',
    when: 'the slot is only asked',
    conceded: 'both concede it',
    asks: slotted,
    unmet: [engine, { ...slot, state: 'asked' }],
    met: [engine, slot],
  },
  // 10
  {
    rule: 'in-date',
    when: 'the wrench ran out the day before',
    conceded: 'never',
    asks: { inDate: ['torque wrench'] },
    unmet: [{ ...wrench, until: CivilDate.parse('2026-03-05') }],
    met: [{ ...wrench, until: CivilDate.parse('2026-03-06') }],
  },
  {
    rule: 'precautions',
    when: 'its precautions are not ticked',
    conceded: 'never',
    asks: { hazards: ['dust'] },
    metAsks: { hazards: ['dust'], precautionsAt: at(99) },
    unmet: [],
    met: [],
  },
  // 11
  {
    rule: 'milestone',
    when: 'an agreed payment has not come',
    conceded: 'both concede it',
    unmet: [payment],
    met: [{ ...payment, metAt: at(50) }],
  },
]

const wyn = anActor(engineShop)
const ada = anActor(lead)
const sheet = Sha256.parse('a'.repeat(64))

describe.each(cases)('$rule: $when', ({ rule, conceded, asks = {}, metAsks = asks, ...of }) => {
  const asked = { ...stage, ...asks }
  const unmetOf = (record: ReturnType<typeof aRecord>, one: Stage) =>
    startConditions(record, one, at(100))

  it('keeps the stage from starting until it is met', () => {
    const ready = { ...stage, ...metAsks }
    expect(unmetOf(aRecord(asked, ...of.unmet), asked).map((one) => one.rule)).toEqual([rule])
    expect(unmetOf(aRecord(ready, ...of.met), ready)).toEqual([])
  })

  it(`conceded: ${conceded}`, () => {
    const record = aRecord(asked, ...of.unmet)
    const [condition] = unmetOf(record, asked)
    if (condition === undefined) throw new Error(`${rule} is met.`)
    const { entity } = condition
    const input = { stage: stage.id, rule, entity, reason: 'Seen and agreed by both.' }
    if (conceded === 'never') {
      expect(press(conditionConcede, ada, record, input)).toMatchObject({
        outcome: 'refusal',
        conditions: [{ rule, concedable: false }],
      })
      return
    }
    if (conceded === 'with the data sheet')
      expect(press(conditionConcede, ada, record, input)).toMatchObject({
        conditions: [{ rule: 'input', field: 'file' }],
      })
    const paper = conceded === 'with the data sheet' ? { file: sheet } : {}
    const arrived = { files: new Set([sheet]) }
    const half = pressed(conditionConcede, ada, record, { ...input, ...paper }, arrived)
    expect(unmetOf(half, asked)).toHaveLength(1)
    expect(unmetOf(pressed(conditionConcede, wyn, half, input, arrived), asked)).toEqual([])
  })

  it('is never conceded on safety work', () => {
    const safe = { ...asked, safety: true }
    expect(unmetOf(aRecord(safe, ...of.unmet), safe)).toMatchObject([{ rule, concedable: false }])
  })
})

test('a check that is not passed keeps a stage from its sign-off, and is conceded by both', () => {
  const working = { ...stage, state: 'ended' as const, startedAt: at(1), endedAt: at(90) }
  const check = aCheck({ stage: stage.id })
  const input = { stage: stage.id, rule: 'check', entity: check.id, reason: 'Seen by both.' }
  const half = pressed(conditionConcede, ada, aRecord(working, check), input)
  expect(press(conditionConcede, wyn, half, input).outcome).toBe('changes')
})

test('nobody may ever concede custody, a yes that is missing, precautions or what is out of date', () => {
  const never = ['custody', 'exclusive-use', 'change-order', 'precautions', 'in-date'] as const
  expect(never.filter(isEverConceded)).toEqual([])
})
