import { describe, expect, it } from 'vitest'
import {
  aHold,
  aLink,
  anActor,
  anId,
  aRecord,
  aStage,
  at,
  engineShop,
  lead,
  leadShop,
  owner,
  trimShop,
} from '../../test/builders.ts'
import { press, pressed } from '../../test/press.ts'
import { aMembership, aShopBook } from '../../test/shop-builders.ts'
import { startConditions } from '../gate/start.ts'
import type { Hold, Stage } from '../record/entities/work.ts'
import { must } from '../record/table.ts'
import { holdInvite } from './hold-invite.ts'
import { holdRelease } from './hold-release.ts'
import { holdRemove } from './hold-remove.ts'
import { holdSet } from './hold-set.ts'
import { holdTakeBack } from './hold-take-back.ts'
import { holdWaive } from './hold-waive.ts'

const wyn = anActor(engineShop, { person: anId('psn', 'wyn') })
const jory = anActor(engineShop, { person: anId('psn', 'jory') })
const stage = aStage({
  party: engineShop,
  state: 'ended',
  startedAt: at(1),
  startedBy: jory.person,
  endedAt: at(9),
  endedBy: wyn.person,
})
const hold = aHold({ stage: stage.id })
const own = aHold({ stage: stage.id, party: engineShop })
const witness = aHold({ stage: stage.id, point: 'witness' })
const record = aRecord(stage, hold, own, witness)
const bookOf = (...persons: string[]) => {
  const shop = anId('shp', 'engines')
  const members = persons.map((name) => aMembership({ shop, person: anId('psn', name) }))
  return { shops: new Map([[shop, aShopBook(shop, ...members)]]) }
}

describe('hold.release', () => {
  it('is pressed by the party named, and nobody else', () => {
    expect(
      press(holdRelease, anActor(owner), record, { hold: hold.id, remark: 'Seen.' }),
    ).toMatchObject({ entities: [{ state: 'released', clearedAt: at(100), remark: 'Seen.' }] })
    for (const other of [anActor(lead), wyn, anActor(trimShop)])
      expect(press(holdRelease, other, record, { hold: hold.id }).outcome).toBe('forbidden')
    expect(press(holdRelease, anActor(lead), record, { hold: hold.id, told: owner }).outcome).toBe(
      'invalid',
    )
  })

  it('is pressed by the person named, where one is', () => {
    const named = { ...hold, person: anId('psn', 'inspector') }
    const all = aRecord(stage, named)
    expect(press(holdRelease, anActor(owner), all, { hold: hold.id }).outcome).toBe('forbidden')
    const inspector = anActor(owner, { person: anId('psn', 'inspector') })
    expect(press(holdRelease, inspector, all, { hold: hold.id }).outcome).toBe('changes')
  })

  it('is never pressed by whoever began or ended the work, in whatever party they act', () => {
    for (const actor of [wyn, jory])
      expect(
        press(holdRelease, actor, record, { hold: own.id }, bookOf('wyn', 'jory')),
      ).toMatchObject({
        outcome: 'refusal',
        conditions: [
          {
            rule: 'own-work',
            clearedBy: [engineShop, lead],
            clearedWith: { command: 'hold.release', input: { hold: own.id } },
          },
        ],
      })
    const ownerWhoWorked = anActor(owner, { person: jory.person })
    expect(press(holdRelease, ownerWhoWorked, record, { hold: hold.id })).toMatchObject({
      conditions: [{ rule: 'own-work', clearedBy: [owner] }],
    })
    const pru = anActor(engineShop, { person: anId('psn', 'pru') })
    expect(press(holdRelease, pru, record, { hold: own.id }).outcome).toBe('changes')
  })

  it('is pressed by the lead for a one-hand shop, and not for a shop with other hands', () => {
    const ada = anActor(lead)
    expect(press(holdRelease, ada, record, { hold: own.id }, bookOf('wyn'))).toMatchObject({
      entities: [{ state: 'released', clearedBy: ada.person }],
    })
    expect(press(holdRelease, ada, record, { hold: own.id }, bookOf('wyn', 'pru'))).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'input', clearedBy: [engineShop] }],
    })
    expect(press(holdRelease, ada, record, { hold: own.id }).outcome).toBe('unknown')
    expect(holdRelease.needs({ hold: own.id }, record).shops).toEqual([anId('shp', 'engines')])
    expect(holdRelease.needs({ hold: hold.id }, record).shops).toEqual([])
  })

  it('is pressed by the owner where the one-hand shop is the lead', () => {
    const leads = { ...stage, party: lead }
    const all = aRecord(leads, { ...own, party: lead })
    const book = aShopBook(leadShop, aMembership({ person: anId('psn', 'ada') }))
    const shops = { shops: new Map([[leadShop, book]]) }
    expect(press(holdRelease, anActor(owner), all, { hold: own.id }, shops).outcome).toBe('changes')
    expect(press(holdRelease, wyn, all, { hold: own.id }, shops).outcome).toBe('forbidden')
  })

  it('refuses before the work has begun, and twice', () => {
    const planned = aRecord({ ...stage, state: 'planned' }, hold)
    expect(press(holdRelease, anActor(owner), planned, { hold: hold.id })).toMatchObject({
      conditions: [{ rule: 'state', entity: stage.id, is: 'planned' }],
    })
    const done = aRecord(stage, { ...hold, state: 'released', clearedAt: at(20) })
    expect(press(holdRelease, anActor(owner), done, { hold: hold.id })).toMatchObject({
      conditions: [{ rule: 'state', is: 'released', since: at(20) }],
    })
  })
})

describe('hold.waive', () => {
  it('lets a witness do without being there, even before the work begins', () => {
    const input = { hold: witness.id, remark: 'Send me the film.' }
    expect(press(holdWaive, anActor(owner), record, input)).toMatchObject({
      entities: [{ state: 'waived', remark: 'Send me the film.' }],
    })
    const planned = aRecord({ ...stage, state: 'planned', startedBy: null, endedBy: null }, witness)
    expect(press(holdWaive, anActor(owner), planned, input).outcome).toBe('changes')
    expect(press(holdWaive, wyn, record, input).outcome).toBe('forbidden')
  })

  it('never waives a hold point', () => {
    expect(press(holdWaive, anActor(owner), record, { hold: hold.id })).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'state', clearedWith: { command: 'hold.release' } }],
    })
  })

  it('is no way for whoever did the work', () => {
    const worked = anActor(owner, { person: wyn.person })
    for (const state of ['ended', 'reopened'] as const)
      expect(
        press(holdWaive, worked, aRecord({ ...stage, state }, witness), { hold: witness.id }),
      ).toMatchObject({ conditions: [{ rule: 'own-work' }] })
    const waived = aRecord(stage, { ...witness, state: 'waived', clearedAt: at(3) })
    expect(press(holdWaive, anActor(owner), waived, { hold: witness.id })).toMatchObject({
      conditions: [{ rule: 'state', is: 'waived' }],
    })
  })
})

describe('hold.invite', () => {
  it('names a visit to come, again where it is put off', () => {
    expect(press(holdInvite, wyn, record, { hold: witness.id, visitAt: at(148) })).toMatchObject({
      entities: [{ state: 'invited', invitedAt: at(100), visitAt: at(148) }],
    })
    const invited = aRecord(stage, { ...witness, state: 'invited', visitAt: at(110) })
    expect(press(holdInvite, wyn, invited, { hold: witness.id, visitAt: at(150) })).toMatchObject({
      entities: [{ visitAt: at(150) }],
    })
  })

  it('refuses a visit that nobody could come to', () => {
    expect(press(holdInvite, wyn, record, { hold: witness.id, visitAt: at(100) })).toMatchObject({
      conditions: [{ rule: 'input', field: 'visitAt' }],
    })
  })

  it('is sent by the party of the stage or by the lead', () => {
    const input = { hold: witness.id, visitAt: at(148) }
    expect(press(holdInvite, anActor(lead), record, input).outcome).toBe('changes')
    expect(press(holdInvite, anActor(trimShop), record, input).outcome).toBe('forbidden')
  })
})

describe('hold.takeBack', () => {
  const released = { ...hold, state: 'released' as const, clearedAt: at(20), clearedBy: wyn.person }
  const reason = 'Looked at the wrong engine.'

  it('puts the point back, with the reason', () => {
    const input = { hold: hold.id, reason }
    expect(press(holdTakeBack, anActor(owner), aRecord(stage, released), input)).toMatchObject({
      entities: [{ state: 'set', clearedAt: null, clearedBy: null, remark: reason }],
    })
    const visited = { ...released, visitAt: at(19) }
    expect(press(holdTakeBack, anActor(owner), aRecord(stage, visited), input)).toMatchObject({
      entities: [{ state: 'invited' }],
    })
  })

  it('is for the party named and for who pressed, not for a lead that had no hand in it', () => {
    const theirs = { ...own, state: 'released' as const, clearedAt: at(20) }
    const by = (person: string) => aRecord(stage, { ...theirs, clearedBy: anId('psn', person) })
    const ada = anActor(lead, { person: anId('psn', 'ada') })
    const input = { hold: own.id, reason }
    expect(press(holdTakeBack, ada, by('pru'), input).outcome).toBe('forbidden')
    expect(press(holdTakeBack, ada, by('ada'), input).outcome).toBe('changes')
    expect(press(holdTakeBack, wyn, by('ada'), input).outcome).toBe('changes')
  })

  it('refuses once what it held up has begun', () => {
    const next = aStage({ state: 'in work', startedAt: at(30) })
    const begun = aRecord(stage, released, next, aLink({ from: stage.id, to: next.id }))
    expect(press(holdTakeBack, anActor(owner), begun, { hold: hold.id, reason })).toMatchObject({
      outcome: 'refusal',
      conditions: [{ entity: next.id, clearedWith: { command: 'stage.reopen' } }],
    })
  })
})

describe('hold.remove', () => {
  const ada = anActor(lead)
  const input = { hold: hold.id, reason: 'Set on the wrong card.' }
  const next = aStage({ assemblies: [] })
  const link = aLink({ from: stage.id, to: next.id })
  const over: Stage = { ...stage, state: 'signed off', signedOffAt: at(10) }
  const waiting = aRecord(over, next, link, hold)

  it('lets what follows go on without it, and keeps why', () => {
    expect(startConditions(waiting, next, at(100))).toMatchObject([{ rule: 'hold' }])
    const without = pressed(holdRemove, ada, waiting, input)
    expect(startConditions(without, next, at(100))).toEqual([])
    expect(must(without.holds, hold.id)).toMatchObject({
      state: 'set',
      removedAt: at(100),
      remark: input.reason,
    })
    const removed = { conditions: [{ rule: 'state', is: 'removed', since: at(100) }] }
    expect(press(holdRemove, ada, without, input)).toMatchObject(removed)
    expect(press(holdRelease, anActor(owner), without, { hold: hold.id })).toMatchObject(removed)
    const visit = { hold: hold.id, visitAt: at(200) }
    expect(press(holdInvite, ada, without, visit)).toMatchObject(removed)
    const again = { stage: stage.id, point: 'hold', name: 'Seen', party: owner }
    expect(press(holdSet, ada, without, again).outcome).toBe('changes')
  })

  it('is for the lead’s manager, not for whom it stops nor for whoever clears it', () => {
    for (const other of [anActor(lead, { role: 'hand' }), wyn, anActor(owner)])
      expect(press(holdRemove, other, waiting, input).outcome).toBe('forbidden')
    expect(press(holdRemove, ada, waiting, { ...input, reason: ' ' }).outcome).toBe('invalid')
  })

  it('refuses once it is released, once what follows has begun, and on work that was reopened', () => {
    const released: Hold = { ...hold, state: 'released', clearedAt: at(20), clearedBy: ada.person }
    expect(press(holdRemove, ada, aRecord(over, released), input)).toMatchObject({
      conditions: [{ rule: 'state', entity: hold.id, is: 'released' }],
    })
    const begun: Stage = { ...next, state: 'in work', startedAt: at(30) }
    expect(press(holdRemove, ada, aRecord(over, begun, link, hold), input)).toMatchObject({
      conditions: [{ rule: 'state', entity: next.id, is: 'in work' }],
    })
    const reopened = aRecord({ ...stage, state: 'reopened', doubt: 'It weeps.' }, hold)
    expect(press(holdRemove, ada, reopened, input)).toMatchObject({
      conditions: [{ rule: 'state', entity: stage.id, is: 'reopened' }],
    })
  })
})

describe('a point between the blast and the first coat', () => {
  const blast = aStage({ name: 'Blast the shell', assemblies: [] })
  const epoxy = aStage({ name: 'Epoxy', assemblies: [], lays: 'epoxy' })
  const window = aLink({ from: blast.id, to: epoxy.id, greatestLagHours: 8 })
  const input = { stage: blast.id, point: 'hold', name: 'Bare metal seen', party: owner }

  it('is refused: bare steel is photographed, coated, and seen afterwards', () => {
    expect(press(holdSet, anActor(lead), aRecord(blast, epoxy, window), input)).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'input', entity: epoxy.id }],
    })
  })

  it('is set after the coat, and wherever the metal may wait', () => {
    const record = aRecord(blast, epoxy, window)
    const after = press(holdSet, anActor(lead), record, {
      ...input,
      stage: epoxy.id,
      noticeDays: 3,
    })
    expect(after).toMatchObject({ outcome: 'changes', entities: [{ noticeDays: 3 }] })
    const patient = aRecord(blast, epoxy, { ...window, greatestLagHours: null })
    expect(press(holdSet, anActor(lead), patient, input).outcome).toBe('changes')
  })
})
