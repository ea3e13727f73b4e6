import { describe, expect, it } from 'vitest'
import {
  aChangeOrder,
  aCheck,
  aHandover,
  aHold,
  aLink,
  anActor,
  anEngine,
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
import { press, pressed } from '../../test/press.ts'
import { must } from '../record/table.ts'
import { stageConfirm } from './stage-confirm.ts'
import { stageReopen } from './stage-reopen.ts'
import { stageReportDone } from './stage-report-done.ts'

const signedOff = {
  state: 'signed off' as const,
  startedAt: at(1),
  endedAt: at(5),
  signedOffAt: at(6),
}
const primer = aStage({ name: 'Primer', ...signedOff })
const colour = aStage({ name: 'Colour', ...signedOff })
const lacquer = aStage({ name: 'Lacquer', party: trimShop, ...signedOff })
const wings = aStage({ name: 'Wings hung' })
const chain = [
  primer,
  colour,
  lacquer,
  wings,
  aLink({ from: primer.id, to: colour.id }),
  aLink({ from: colour.id, to: lacquer.id }),
  aLink({ from: lacquer.id, to: wings.id }),
]
const ada = anActor(lead)
const reason = 'It has sunk along the seam.'
const record = aRecord(chain, anEngine())

describe('stage.reopen', () => {
  const reopened = pressed(stageReopen, ada, record, { stage: primer.id, reason })

  it('puts everything signed off downstream in doubt, with the reason, and deletes nothing', () => {
    const state = (id: string) => must(reopened.stages, id).state
    expect(state(primer.id)).toBe('reopened')
    expect([state(colour.id), state(lacquer.id), state(wings.id)]).toEqual([
      'in doubt',
      'in doubt',
      'planned',
    ])
    expect(must(reopened.stages, lacquer.id)).toEqual({
      ...lacquer,
      state: 'in doubt',
      doubt: reason,
    })
  })

  it('leaves alone what does not rely on it', () => {
    const later = pressed(stageReopen, ada, record, { stage: colour.id, reason })
    expect(must(later.stages, primer.id).state).toBe('signed off')
  })

  it('asks for its signatures, checks and hold points anew, and keeps what they said', () => {
    const reading = aCheck({ stage: primer.id, type: 'reading', state: 'passed', value: 82 })
    const hold = aHold({ stage: primer.id, state: 'released', clearedAt: at(6), remark: 'Even.' })
    const sign = {
      kind: 'signOff' as const,
      id: anId('sgn', 'primer'),
      project,
      stage: primer.id,
      party: lead,
      type: 'sign-off' as const,
      person: ada.person,
      at: at(6),
      withdrawnAt: null,
      reason: null,
    }
    const handover = aHandover({ stage: primer.id, from: lead, to: trimShop })
    const all = aRecord(chain, anEngine(), reading, hold, sign, handover)
    const after = pressed(stageReopen, ada, all, { stage: primer.id, reason })
    expect(must(after.checks, reading.id)).toEqual({ ...reading, state: 'missing' })
    expect(must(after.holds, hold.id)).toMatchObject({
      state: 'set',
      clearedAt: null,
      remark: 'Even.',
    })
    expect(must(after.signOffs, sign.id)).toMatchObject({ withdrawnAt: at(100), reason })
    expect(must(after.handovers, handover.id).state).toBe('taken back')
  })

  it('is pressed by the manager of its party or by the lead, with a reason, on work that was signed off', () => {
    const input = { stage: lacquer.id, reason }
    const as = (actor: ReturnType<typeof anActor>) => press(stageReopen, actor, record, input)
    expect(as(anActor(trimShop)).outcome).toBe('changes')
    expect(as(ada).outcome).toBe('changes')
    expect(as(anActor(trimShop, { role: 'hand' })).outcome).toBe('forbidden')
    expect(as(anActor(owner)).outcome).toBe('forbidden')
    expect(press(stageReopen, ada, record, { stage: primer.id, reason: ' ' }).outcome).toBe(
      'invalid',
    )
    expect(press(stageReopen, ada, record, { stage: wings.id, reason })).toMatchObject({
      conditions: [{ rule: 'state', is: 'planned' }],
    })
  })
})

describe('stage.confirm', () => {
  const doubted = aRecord(
    chain,
    anEngine(),
    { ...colour, state: 'in doubt', doubt: reason },
    {
      ...lacquer,
      state: 'in doubt',
      doubt: reason,
    },
  )

  it('signs off again what stands up, by its manager or the lead', () => {
    const confirmed = press(stageConfirm, ada, doubted, { stage: colour.id })
    expect(confirmed).toMatchObject({
      entities: [
        { state: 'signed off', doubt: null, signedOffAt: at(6) },
        { kind: 'signOff', type: 'confirm', party: lead, person: ada.person },
      ],
    })
    const trimmer = anActor(trimShop)
    expect(press(stageConfirm, trimmer, doubted, { stage: colour.id }).outcome).toBe('forbidden')
  })

  it('refuses while what it relied on is itself in doubt or reopened, and names the first cause', () => {
    expect(press(stageConfirm, ada, doubted, { stage: lacquer.id })).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'predecessor', entity: colour.id, is: 'in doubt' }],
    })
    const reopened = pressed(stageReopen, ada, record, { stage: primer.id, reason })
    expect(press(stageConfirm, ada, reopened, { stage: lacquer.id })).toMatchObject({
      conditions: [{ rule: 'predecessor', entity: colour.id, root: primer.id }],
    })
  })

  it('refuses work without its checks, like a sign-off', () => {
    const check = aCheck({ stage: colour.id })
    const bare = aRecord(chain, anEngine(), { ...colour, state: 'in doubt' }, check)
    expect(press(stageConfirm, ada, bare, { stage: colour.id })).toMatchObject({
      conditions: [{ rule: 'check', entity: check.id, is: 'missing' }],
    })
  })
})

describe('stage.reportDone', () => {
  const order = aChangeOrder()
  const extra = aStage({ party: engineShop, changeOrder: order.id })
  const all = aRecord(extra, order, anEngine({ custodian: engineShop }))
  const input = { stage: extra.id, startedAt: at(20), endedAt: at(30), reason: 'Done on Saturday.' }
  const wyn = anActor(engineShop)

  it('is never refused for a condition: the work stands in doubt, with what was unmet', () => {
    expect(press(stageReportDone, wyn, all, input)).toMatchObject({
      outcome: 'changes',
      entities: [
        {
          state: 'in doubt',
          startedAt: at(20),
          endedAt: at(30),
          reported: `change-order ${order.id}`,
          doubt: 'Done on Saturday.',
        },
      ],
    })
  })

  it('gives no way round the yes: it is confirmed only when the change order is approved', () => {
    const reported = pressed(stageReportDone, wyn, all, input)
    expect(press(stageConfirm, wyn, reported, { stage: extra.id })).toMatchObject({
      conditions: [{ rule: 'change-order', clearedWith: { command: 'changeOrder.approve' } }],
    })
    const approved = aRecord(
      extra,
      { ...order, state: 'approved' },
      anEngine({ custodian: engineShop }),
    )
    const fine = pressed(stageReportDone, wyn, approved, input)
    expect(must(fine.stages, extra.id).reported).toBe('-')
    expect(press(stageConfirm, wyn, fine, { stage: extra.id })).toMatchObject({
      entities: [{ state: 'signed off', signedOffAt: at(100) }, { type: 'confirm' }],
    })
  })

  it('moves no custody: what another party holds stays where the record has it', () => {
    const fitting = aStage({ host: anId('asm', 'shell'), fits: [anEngine().id] })
    const apart = aRecord(fitting, anEngine({ custodian: engineShop }), {
      ...anEngine(),
      id: anId('asm', 'shell'),
      name: 'Shell',
    })
    const done = press(stageReportDone, ada, apart, { ...input, stage: fitting.id })
    expect(done).toMatchObject({ entities: [{ kind: 'stage', state: 'in doubt' }] })
    expect(done.outcome === 'changes' && done.entities).toHaveLength(1)
  })

  it('refuses only times that cannot be, and work that has begun', () => {
    expect(press(stageReportDone, wyn, all, { ...input, endedAt: at(101) })).toMatchObject({
      conditions: [{ rule: 'time', why: 'in the future' }],
    })
    expect(press(stageReportDone, wyn, all, { ...input, endedAt: at(19) })).toMatchObject({
      conditions: [{ rule: 'time', why: 'before the start' }],
    })
    const begun = aRecord({ ...extra, state: 'in work', startedAt: at(3) }, order)
    expect(press(stageReportDone, wyn, begun, input)).toMatchObject({
      conditions: [{ rule: 'state', is: 'in work' }],
    })
  })

  it('is told to the lead by phone, marked so', () => {
    expect(press(stageReportDone, ada, all, { ...input, told: engineShop })).toMatchObject({
      entities: [
        { startedBy: null, endedBy: null },
        { kind: 'told', party: engineShop },
      ],
    })
    expect(press(stageReportDone, ada, all, input).outcome).toBe('forbidden')
  })
})
