import { describe, expect, it } from 'vitest'
import {
  aContext,
  aHandover,
  anActor,
  anAssembly,
  anEngine,
  anId,
  aParty,
  aRecord,
  aShell,
  aStage,
  at,
  engineId,
  engineShop,
  lead,
  shellId,
  trimShop,
} from '../../test/builders.ts'
import type { Actor } from '../record/actor.ts'
import { plain } from '../record/condition.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { Sha256 } from '../record/scalars.ts'
import { handoverPrepare } from './handover-prepare.ts'
import { handoverReceive } from './handover-receive.ts'
import { handoverRelease } from './handover-release.ts'
import { handoverTakeBack } from './handover-take-back.ts'

const engines = anActor(engineShop)
const coachworks = anActor(lead)
const carburettor = anId('asm', 'carburettor')

const prepare = (record: ProjectRecord, input: object, actor: Actor = engines) =>
  handoverPrepare.apply(input, actor, record, aContext(actor))
const release = (record: ProjectRecord, input: object, actor: Actor = engines) =>
  handoverRelease.apply(input, actor, record, aContext(actor))
const receive = (record: ProjectRecord, input: object, actor: Actor = coachworks) =>
  handoverReceive.apply(input, actor, record, aContext(actor))

describe('handover.prepare', () => {
  it('names what goes, to whom, in what condition and how to care for it', () => {
    const record = aRecord(anEngine({ custodian: engineShop }))
    const input = {
      assemblies: [engineId],
      to: lead,
      condition: 'Run in on the bench for two hours.',
      care: 'Keep the ports plugged.',
    }
    expect(prepare(record, input)).toMatchObject({
      outcome: 'changes',
      entities: [{ ...input, kind: 'handover', from: engineShop, state: 'prepared', pieces: null }],
    })
  })

  it('counts the pieces of a lot', () => {
    const lot = anAssembly({ pieces: 14, custodian: engineShop })
    expect(prepare(aRecord(lot), { assemblies: [lot.id], to: lead })).toMatchObject({
      entities: [{ pieces: 14 }],
    })
  })

  it('is for the custodian alone', () => {
    const record = aRecord(anEngine({ custodian: engineShop }))
    expect(prepare(record, { assemblies: [engineId], to: trimShop }, coachworks)).toEqual({
      outcome: 'forbidden',
    })
  })

  it('is entered by the lead where the engine shop told it by telephone, and marked so', () => {
    const record = aRecord(anEngine({ custodian: engineShop }))
    const input = { assemblies: [engineId], to: lead, told: engineShop }
    expect(prepare(record, input, coachworks)).toMatchObject({
      entities: [
        { kind: 'handover' },
        { kind: 'told', party: engineShop, command: 'handover.prepare', confirmedAt: null },
      ],
    })
  })

  it('waits for the photos that it names', () => {
    const record = aRecord(anEngine({ custodian: engineShop }))
    const photo = Sha256.parse('ab'.repeat(32))
    const input = { assemblies: [engineId], to: lead, files: [photo, photo] }
    expect(prepare(record, input)).toEqual({
      outcome: 'refusal',
      conditions: [{ ...plain(record.id), rule: 'file', sha256: photo }],
    })
    const arrived = aContext(engines, { files: new Set([photo]) })
    expect(handoverPrepare.apply(input, engines, record, arrived)).toMatchObject({
      entities: [{ state: 'prepared' }],
    })
  })

  it('refuses a second handover of the same engine and offers the first one', () => {
    const open = aHandover()
    const record = aRecord(anEngine({ custodian: engineShop }), open)
    expect(prepare(record, { assemblies: [engineId], to: trimShop })).toMatchObject({
      outcome: 'refusal',
      conditions: [
        {
          rule: 'exists',
          entity: open.id,
          clearedBy: [engineShop],
          clearedWith: { command: 'handover.release', input: { handover: open.id } },
        },
      ],
    })
  })

  it('refuses things that are in two hands', () => {
    const record = aRecord(anEngine({ custodian: engineShop }), aShell({ custodian: lead }))
    expect(prepare(record, { assemblies: [engineId, shellId], to: trimShop })).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'custody', entity: shellId, custodian: lead, clearedBy: [lead] }],
    })
  })

  it('refuses to hand over to oneself, to an observer and to who has left', () => {
    const insurer = aParty({ role: 'observer' })
    const gone = aParty({ leftAt: at(5) })
    const record = aRecord(anEngine({ custodian: engineShop }), insurer, gone)
    const to = (party: string) => prepare(record, { assemblies: [engineId], to: party })
    expect(to(engineShop)).toMatchObject({ conditions: [{ rule: 'input', field: 'to' }] })
    expect(to(insurer.id)).toMatchObject({ conditions: [{ rule: 'input', field: 'to' }] })
    expect(to(gone.id)).toMatchObject({ conditions: [{ rule: 'state', is: 'left' }] })
  })
})

describe('handover.release', () => {
  it('makes the engine visible as coming while the releaser still answers for it', () => {
    const handover = aHandover({ care: 'Keep upright.' })
    const record = aRecord(anEngine({ custodian: engineShop }), handover)
    expect(release(record, { handover: handover.id })).toEqual({
      outcome: 'changes',
      entities: [
        { ...handover, state: 'released', releasedAt: at(100), releasedBy: engines.person },
      ],
    })
  })

  it('names what is fitted to the engine, since it goes along', () => {
    const handover = aHandover()
    const fitted = anAssembly({ id: carburettor, custodian: engineShop, host: engineId })
    const record = aRecord(anEngine({ custodian: engineShop }), fitted, handover)
    expect(release(record, { handover: handover.id })).toMatchObject({
      entities: [{ assemblies: [engineId, carburettor] }],
    })
  })

  it('refuses an engine that is fitted to a shell that stays, and offers to take it off', () => {
    const handover = aHandover()
    const record = aRecord(
      aShell({ custodian: engineShop }),
      anEngine({ custodian: engineShop, host: shellId }),
      handover,
    )
    expect(release(record, { handover: handover.id })).toMatchObject({
      outcome: 'refusal',
      conditions: [
        {
          rule: 'must-be-off',
          entity: engineId,
          assembly: shellId,
          clearedWith: { command: 'assembly.takeOff', input: { assembly: engineId } },
        },
      ],
    })
  })

  it('releases a fitted engine together with its shell', () => {
    const handover = aHandover({ assemblies: [engineId, shellId] })
    const record = aRecord(
      aShell({ custodian: engineShop }),
      anEngine({ custodian: engineShop, host: shellId }),
      handover,
    )
    expect(release(record, { handover: handover.id })).toMatchObject({ outcome: 'changes' })
  })

  it('refuses while a stage works on the engine or on what is fitted to it, and allows a paused one', () => {
    const handover = aHandover()
    const fitted = anAssembly({ id: carburettor, custodian: engineShop, host: engineId })
    const stage = aStage({
      party: engineShop,
      assemblies: [carburettor],
      state: 'in work',
      startedAt: at(90),
    })
    const engine = anEngine({ custodian: engineShop })
    expect(
      release(aRecord(engine, fitted, handover, stage), { handover: handover.id }),
    ).toMatchObject({
      outcome: 'refusal',
      conditions: [
        { rule: 'exclusive-use', stage: stage.id, since: at(90), clearedBy: [engineShop] },
      ],
    })
    const paused = aRecord(engine, fitted, handover, { ...stage, state: 'paused' as const })
    expect(release(paused, { handover: handover.id })).toMatchObject({ outcome: 'changes' })
  })

  it('refuses what the releaser does not answer for', () => {
    const handover = aHandover()
    const record = aRecord(anEngine({ custodian: trimShop, since: at(3) }), handover)
    expect(release(record, { handover: handover.id })).toMatchObject({
      conditions: [{ rule: 'custody', custodian: trimShop, since: at(3), clearedBy: [trimShop] }],
    })
  })

  it('refuses what was released already', () => {
    const handover = aHandover({ state: 'released', releasedAt: at(1) })
    const record = aRecord(anEngine({ custodian: engineShop }), handover)
    expect(release(record, { handover: handover.id })).toMatchObject({
      conditions: [{ rule: 'state', is: 'released', needs: ['prepared'] }],
    })
  })
})

describe('handover.takeBack', () => {
  const takeBack = (record: ProjectRecord, input: object, actor: Actor = engines) =>
    handoverTakeBack.apply(input, actor, record, aContext(actor))

  it('takes back what was released by mistake, with the reason kept', () => {
    const handover = aHandover({ state: 'released', releasedAt: at(1) })
    const record = aRecord(anEngine({ custodian: engineShop }), handover)
    expect(takeBack(record, { handover: handover.id, reason: 'Wrong engine.' })).toEqual({
      outcome: 'changes',
      entities: [{ ...handover, state: 'taken back', remarks: 'Wrong engine.' }],
    })
  })

  it('refuses what has been received: it must be handed back', () => {
    const handover = aHandover({ state: 'received', releasedAt: at(1), receivedAt: at(2) })
    const record = aRecord(anEngine(), handover)
    expect(takeBack(record, { handover: handover.id, reason: 'Too late.' })).toMatchObject({
      conditions: [{ rule: 'state', is: 'received' }],
    })
  })

  it('is for the releaser alone', () => {
    const handover = aHandover()
    const record = aRecord(anEngine({ custodian: engineShop }), handover)
    expect(takeBack(record, { handover: handover.id, reason: 'No.' }, coachworks)).toEqual({
      outcome: 'forbidden',
    })
  })
})

describe('handover.receive', () => {
  const coming = aHandover({ state: 'released', releasedAt: at(98) })
  const engine = anEngine({ custodian: engineShop })

  it('moves custody on a yes, when it happened, and takes along what is fitted', () => {
    const fitted = anAssembly({ id: carburettor, custodian: engineShop, host: engineId })
    const record = aRecord(engine, fitted, coming)
    expect(receive(record, { handover: coming.id, outcome: 'accepted' })).toEqual({
      outcome: 'changes',
      entities: [
        {
          ...coming,
          state: 'received',
          receivedAt: at(100),
          receivedBy: coachworks.person,
          outcome: 'accepted',
        },
        { ...engine, custodian: lead, since: at(100) },
        { ...fitted, custodian: lead, since: at(100) },
      ],
    })
  })

  it('leaves custody with the releaser when it is refused', () => {
    const input = { handover: coming.id, outcome: 'refused', remarks: 'The sump is cracked.' }
    const answer = receive(aRecord(engine, coming), input)
    expect(answer).toMatchObject({
      outcome: 'changes',
      entities: [{ state: 'refused', outcome: 'refused', remarks: 'The sump is cracked.' }],
    })
    expect(answer).toHaveProperty('entities.length', 1)
  })

  it.each(['accepted with remarks', 'refused'])(
    'asks for the remarks where it is %s',
    (outcome) => {
      const record = aRecord(engine, coming)
      expect(receive(record, { handover: coming.id, outcome, remarks: ' ' })).toMatchObject({
        outcome: 'refusal',
        conditions: [{ rule: 'input', field: 'remarks' }],
      })
    },
  )

  it("asks for the count of a lot, and for remarks where it isn't the count that left", () => {
    const lot = anAssembly({ pieces: 14, custodian: engineShop })
    const handover = { ...coming, assemblies: [lot.id], pieces: 14 }
    const record = aRecord(lot, handover)
    const input = { handover: handover.id, outcome: 'accepted' }
    expect(receive(record, input)).toMatchObject({
      conditions: [{ rule: 'input', field: 'pieces' }],
    })
    expect(receive(record, { ...input, pieces: 13 })).toMatchObject({
      conditions: [{ rule: 'input', field: 'outcome' }],
    })
    const remarked = { outcome: 'accepted with remarks', remarks: 'One clip is missing.' }
    expect(receive(record, { ...input, ...remarked, pieces: 13 })).toMatchObject({
      entities: [{ state: 'received', receivedPieces: 13 }, { custodian: lead }],
    })
  })

  it('lets a guest by the link receive with name and finger, and nothing else', () => {
    const guest = anActor(lead, { role: 'guest' })
    const record = aRecord(engine, coming)
    const input = { handover: coming.id, outcome: 'accepted' }
    expect(receive(record, input, guest)).toMatchObject({
      outcome: 'refusal',
      conditions: [{ field: 'receivedByName' }, { field: 'signature' }],
    })
    const signed = { ...input, receivedByName: 'P. Wray', signature: 'M0,0L10,4L22,9' }
    expect(receive(record, signed, guest)).toMatchObject({
      entities: [
        { state: 'received', receivedBy: null, receivedByName: 'P. Wray' },
        { custodian: lead },
      ],
    })
    expect(receive(record, signed, anActor(trimShop, { role: 'guest' }))).toEqual({
      outcome: 'forbidden',
    })
    const prepared = aHandover({ from: lead, to: trimShop })
    expect(release(aRecord(anEngine(), prepared), { handover: prepared.id }, guest)).toEqual({
      outcome: 'forbidden',
    })
  })

  it('refuses what was only prepared and says who has to release it', () => {
    const handover = aHandover()
    const record = aRecord(engine, handover)
    expect(receive(record, { handover: handover.id, outcome: 'accepted' })).toMatchObject({
      conditions: [
        {
          rule: 'state',
          is: 'prepared',
          clearedBy: [engineShop],
          clearedWith: { command: 'handover.release' },
        },
      ],
    })
  })

  it('refuses while work on it was begun after its release', () => {
    const stage = aStage({ party: engineShop, state: 'in work', startedAt: at(99) })
    const record = aRecord(engine, coming, stage)
    expect(receive(record, { handover: coming.id, outcome: 'accepted' })).toMatchObject({
      conditions: [{ rule: 'exclusive-use', stage: stage.id }],
    })
  })

  it('is never before the release, whatever the receiving phone thinks the time is', () => {
    const record = aRecord(engine, coming)
    const context = aContext(coachworks, { happenedAt: at(97) })
    const input = { handover: coming.id, outcome: 'accepted' }
    expect(handoverReceive.apply(input, coachworks, record, context)).toMatchObject({
      entities: [{ receivedAt: at(98) }, { since: at(98) }],
    })
  })
})
