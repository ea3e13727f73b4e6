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
  at,
  engineId,
  engineShop,
  lead,
  shellId,
  trimShop,
} from '../../test/builders.ts'
import { aSlot } from '../../test/shop-builders.ts'
import type { Actor } from '../record/actor.ts'
import type { ProjectCommand } from '../record/command.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { assemblyAdd } from './assembly-add.ts'
import { assemblyDescribe } from './assembly-describe.ts'
import { assemblyFit } from './assembly-fit.ts'
import { assemblyTakeOff } from './assembly-take-off.ts'
import { itinerary } from './itinerary.ts'
import { moveCustody } from './move-custody.ts'

const coachworks = anActor(lead)
const engines = anActor(engineShop)
const press = (command: ProjectCommand, record: ProjectRecord, input: object, actor: Actor) =>
  command.apply(input, actor, record, aContext(actor))

describe('assembly.add and assembly.describe', () => {
  it('puts a lot in the record with its pieces, in the custody of a party', () => {
    const input = { name: 'Brightwork', pieces: 14, custodian: trimShop }
    expect(press(assemblyAdd, aRecord(), input, coachworks)).toMatchObject({
      entities: [{ kind: 'assembly', ...input, since: at(100), host: null }],
    })
    expect(press(assemblyAdd, aRecord(), input, engines)).toEqual({ outcome: 'forbidden' })
  })

  it('refuses a name that another assembly has, whatever its capitals and blanks', () => {
    const record = aRecord(aShell(), anEngine())
    const input = { name: ' SHELL ', custodian: lead }
    const same = { conditions: [{ rule: 'exists', field: 'name', entity: shellId }] }
    expect(press(assemblyAdd, record, input, coachworks)).toMatchObject(same)
    const rename = { assembly: engineId, name: 'shell' }
    expect(press(assemblyDescribe, record, rename, coachworks)).toMatchObject(same)
  })

  it('refuses a custodian who only watches', () => {
    const insurer = aParty({ role: 'observer' })
    const input = { name: 'Wing', custodian: insurer.id }
    expect(press(assemblyAdd, aRecord(insurer), input, coachworks)).toMatchObject({
      conditions: [{ rule: 'input', field: 'custodian' }],
    })
  })

  it('corrects the count of a lot by who answers for it', () => {
    const lot = anAssembly({ pieces: 14, custodian: engineShop })
    const input = { assembly: lot.id, pieces: 13 }
    expect(press(assemblyDescribe, aRecord(lot), input, engines)).toEqual({
      outcome: 'changes',
      entities: [{ ...lot, pieces: 13 }],
    })
    expect(press(assemblyDescribe, aRecord(lot), input, anActor(trimShop))).toEqual({
      outcome: 'forbidden',
    })
  })
})

describe('assembly.fit and assembly.takeOff', () => {
  const fit = { assembly: engineId, host: shellId, reason: 'Was in when the car came.' }
  const off = { assembly: engineId, reason: 'Is on the stand.' }

  it('corrects what is fitted, with the reason kept on the assembly', () => {
    const engine = anEngine()
    expect(press(assemblyFit, aRecord(aShell(), engine), fit, coachworks)).toMatchObject({
      entities: [
        { ...engine, host: shellId },
        { kind: 'note', on: engineId, sharing: 'shared', business: null, text: fit.reason },
      ],
    })
    const fitted = anEngine({ host: shellId })
    expect(press(assemblyTakeOff, aRecord(aShell(), fitted), off, coachworks)).toMatchObject({
      entities: [{ ...fitted, host: null }, { text: off.reason }],
    })
  })

  it('refuses to fit what is in other hands than its host', () => {
    const record = aRecord(aShell(), anEngine({ custodian: engineShop }))
    expect(press(assemblyFit, record, fit, engines)).toMatchObject({
      conditions: [{ rule: 'custody', entity: shellId, custodian: lead }],
    })
    expect(press(assemblyFit, record, fit, coachworks)).toEqual({ outcome: 'forbidden' })
  })

  it('refuses to fit a shell to its own engine, however far round', () => {
    const head = anId('asm', 'head')
    const record = aRecord(
      aShell(),
      anEngine({ host: shellId }),
      anAssembly({ id: head, host: engineId }),
    )
    const round = { assembly: shellId, host: head, reason: 'No.' }
    expect(press(assemblyFit, record, round, coachworks)).toMatchObject({
      conditions: [{ rule: 'input', field: 'host' }],
    })
    const itself = { ...round, host: shellId }
    expect(press(assemblyFit, record, itself, coachworks)).toMatchObject({
      conditions: [{ rule: 'input', field: 'host' }],
    })
  })

  it('refuses to fit what is fitted, and to take off what is off', () => {
    const record = aRecord(aShell(), anEngine({ host: shellId }))
    expect(press(assemblyFit, record, fit, coachworks)).toMatchObject({
      conditions: [{ rule: 'must-be-off', clearedWith: { command: 'assembly.takeOff' } }],
    })
    expect(press(assemblyTakeOff, aRecord(aShell(), anEngine()), off, coachworks)).toMatchObject({
      conditions: [{ rule: 'state', is: 'off' }],
    })
  })
})

describe('moving custody', () => {
  it('takes along what is fitted, through every level, and leaves what is there already', () => {
    const head = anAssembly({ host: engineId })
    const plugs = anAssembly({ host: head.id, custodian: trimShop })
    const record = aRecord(aShell(), anEngine({ host: shellId }), head, plugs, anAssembly())
    expect(
      moveCustody(record, [engineId], trimShop, at(7)).map(({ id, custodian, since }) => ({
        id,
        custodian,
        since,
      })),
    ).toEqual([
      { id: engineId, custodian: trimShop, since: at(7) },
      { id: head.id, custodian: trimShop, since: at(7) },
    ])
  })
})

describe('itinerary', () => {
  it('tells who answered for the engine from when to when, what is coming and what is planned', () => {
    const there = aHandover({ state: 'received', from: lead, to: engineShop, receivedAt: at(10) })
    const back = aHandover({ state: 'received', receivedAt: at(50) })
    const refused = aHandover({ state: 'refused', receivedAt: at(40) })
    const coming = aHandover({ state: 'released', from: lead, to: trimShop })
    const slot = aSlot({ assembly: engineId })
    const record = aRecord(anEngine({ since: at(50) }), back, there, refused, coming, slot, [
      aSlot({ assembly: engineId, state: 'released' }),
      aSlot(),
    ])
    expect(itinerary(record, engineId)).toEqual({
      stays: [
        { party: lead, from: null, to: at(10), handover: null },
        { party: engineShop, from: at(10), to: at(50), handover: there.id },
        { party: lead, from: at(50), to: null, handover: back.id },
      ],
      coming: [coming],
      slots: [slot],
    })
  })

  it('begins where an assembly was put in the record', () => {
    expect(itinerary(aRecord(anEngine({ since: at(3) })), engineId).stays).toEqual([
      { party: lead, from: at(3), to: null, handover: null },
    ])
  })
})
