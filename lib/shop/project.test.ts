import { describe, expect, it } from 'vitest'
import {
  aContext,
  aHandover,
  anActor,
  anEngine,
  anId,
  aParty,
  aProject,
  aRecord,
  aStage,
  at,
  engineId,
  engineShop,
  lead,
  leadShop,
  owner,
  trimShop,
} from '../../test/builders.ts'
import { aShop, aShopBook } from '../../test/shop-builders.ts'
import type { Actor } from '../record/actor.ts'
import type { ProjectCommand } from '../record/command.ts'
import type { Participant } from '../record/entities/people.ts'
import { CommandKey, idsFrom } from '../record/ids.ts'
import { emptyProjectRecord, type ProjectRecord } from '../record/project-record.ts'
import { Minor } from '../record/scalars.ts'
import { participantAdd } from './participant-add.ts'
import { participantRemove } from './participant-remove.ts'
import { partyAdd } from './party-add.ts'
import { partyDescribe } from './party-describe.ts'
import { partyLeave } from './party-leave.ts'
import { projectCreate } from './project-create.ts'
import { projectDescribe } from './project-describe.ts'

const coachworks = anActor(lead)
const engines = anActor(engineShop)
const ines = anActor(owner)
const glassShop = anId('shp', 'glass')
const shops = new Map(
  [
    aShopBook(leadShop, aShop({ currency: 'EUR', timeZone: 'Europe/Dublin', demo: true })),
    aShopBook(glassShop, aShop({ id: glassShop, name: 'Ferrier Glass' })),
  ].map((book) => [book.id, book]),
)
const press = (command: ProjectCommand, record: ProjectRecord, input: object, actor: Actor) =>
  command.apply(input, actor, record, aContext(actor, { shops }))

describe('project.create', () => {
  const maud: Actor = { ...coachworks, party: null, shop: leadShop }
  const key = CommandKey.parse('01997000-0000-7000-8000-00000000cafe')
  const id = idsFrom(key)('prj')
  const create = (input: object, actor: Actor = maud, record = emptyProjectRecord(id)) =>
    projectCreate.apply(
      { shop: leadShop, name: 'Averley Three-Litre', ...input },
      actor,
      record,
      aContext(actor, { shops, newId: idsFrom(key) }),
    )

  it("begins under the first id of its key, with the shop as its lead, in the shop's currency and zone", () => {
    expect(create({ year: 1961 })).toMatchObject({
      entities: [
        {
          kind: 'project',
          id,
          name: 'Averley Three-Litre',
          year: 1961,
          currency: 'EUR',
          timeZone: 'Europe/Dublin',
          standingConsentEach: null,
          demo: true,
        },
        {
          kind: 'party',
          project: id,
          name: 'Tarn Lane Coachworks',
          role: 'shop',
          lead: true,
          shop: leadShop,
        },
      ],
    })
  })

  it('names the owner at once where asked', () => {
    expect(create({ owner: 'Ines Halloran', currency: 'GBP' })).toMatchObject({
      entities: [
        { currency: 'GBP' },
        { lead: true },
        { kind: 'party', role: 'owner', name: 'Ines Halloran', lead: false, shop: null },
      ],
    })
  })

  it('is for managers of that shop, and once', () => {
    expect(create({}, { ...maud, role: 'hand' })).toEqual({ outcome: 'forbidden' })
    expect(create({ shop: glassShop })).toEqual({ outcome: 'forbidden' })
    expect(create({}, maud, aRecord())).toMatchObject({
      conditions: [{ rule: 'exists', field: 'project' }],
    })
  })
})

describe('project.describe', () => {
  it('describes the car by its lead', () => {
    const input = { description: 'Ivory over oxblood.', year: null }
    expect(press(projectDescribe, aRecord(), input, coachworks)).toEqual({
      outcome: 'changes',
      entities: [aProject({ description: 'Ivory over oxblood.', year: null })],
    })
    expect(press(projectDescribe, aRecord(), input, engines)).toEqual({ outcome: 'forbidden' })
    expect(press(projectDescribe, aRecord(), {}, engines)).toEqual({ outcome: 'forbidden' })
  })

  const consent = { standingConsentEach: 250_00, standingConsentTotal: 1_000_00 }

  it('takes a standing consent from the owner alone, with fresh proof', () => {
    expect(press(projectDescribe, aRecord(), consent, ines)).toEqual({
      outcome: 'changes',
      entities: [
        aProject({
          standingConsentEach: Minor.parse(250_00),
          standingConsentTotal: Minor.parse(1_000_00),
        }),
      ],
    })
    expect(press(projectDescribe, aRecord(), consent, coachworks)).toEqual({
      outcome: 'forbidden',
    })
    const both = { ...consent, name: 'Mine' }
    expect(press(projectDescribe, aRecord(), both, ines)).toEqual({ outcome: 'forbidden' })
    const stale = anActor(owner, { provedAt: at(99) })
    expect(press(projectDescribe, aRecord(), consent, stale)).toMatchObject({
      conditions: [{ rule: 'proof' }],
    })
  })

  it('refuses half a standing consent, and one whose total is less than one change', () => {
    const half = { standingConsentEach: 250_00 }
    expect(press(projectDescribe, aRecord(), half, ines)).toMatchObject({
      conditions: [{ rule: 'input', field: 'standingConsentTotal' }],
    })
    const less = { standingConsentEach: 250_00, standingConsentTotal: 249_99 }
    expect(press(projectDescribe, aRecord(), less, ines)).toMatchObject({
      conditions: [{ rule: 'input', field: 'standingConsentTotal' }],
    })
    const none = { standingConsentEach: null, standingConsentTotal: null }
    expect(press(projectDescribe, aRecord(), none, ines)).toMatchObject({ outcome: 'changes' })
  })
})

describe('party.add and party.describe', () => {
  it('adds a shop of this installation, one without a log-in, and a supplier', () => {
    const glass = { name: 'Ferrier Glass', role: 'shop', shop: glassShop, bills: 'lead' }
    expect(press(partyAdd, aRecord(), glass, coachworks)).toMatchObject({
      entities: [{ kind: 'party', ...glass, lead: false, leftAt: null }],
    })
    const plater = { name: 'Northgate Plating', role: 'shop' }
    expect(press(partyAdd, aRecord(), plater, coachworks)).toMatchObject({
      entities: [{ shop: null, bills: 'owner' }],
    })
    const supplier = { name: 'Quill Electrical', role: 'supplier' }
    expect(press(partyAdd, aRecord(), supplier, coachworks)).toMatchObject({ outcome: 'changes' })
    expect(press(partyAdd, aRecord(), supplier, engines)).toEqual({ outcome: 'forbidden' })
  })

  it('refuses a second owner, a name twice, a shop twice, and a shop that is no shop', () => {
    const add = (over: object) =>
      press(partyAdd, aRecord(), { name: 'New', role: 'shop', ...over }, coachworks)
    expect(add({ role: 'owner' })).toMatchObject({ conditions: [{ field: 'role' }] })
    expect(add({ name: ' bexwater  engines' })).toMatchObject({ conditions: [{ field: 'name' }] })
    expect(add({ shop: leadShop })).toMatchObject({ conditions: [{ field: 'shop' }] })
    expect(add({ role: 'supplier', shop: glassShop })).toMatchObject({
      conditions: [{ rule: 'input', field: 'shop' }],
    })
    expect(add({ role: 'observer', bills: 'lead' })).toMatchObject({
      conditions: [{ rule: 'input', field: 'bills' }],
    })
    expect(add({ shop: anId('shp', 'nowhere') })).toMatchObject({ outcome: 'unknown' })
  })

  it('links a shop that was entered for by telephone to its own book, by the lead', () => {
    const glass = aParty({ name: 'Ferrier Glass' })
    const input = { party: glass.id, shop: glassShop }
    expect(press(partyDescribe, aRecord(glass), input, coachworks)).toEqual({
      outcome: 'changes',
      entities: [{ ...glass, shop: glassShop }],
    })
    const asGlass = anActor(glass.id)
    expect(press(partyDescribe, aRecord(glass), input, asGlass)).toEqual({ outcome: 'forbidden' })
    const rename = { party: glass.id, name: 'Ferrier & Daughter' }
    expect(press(partyDescribe, aRecord(glass), rename, asGlass)).toMatchObject({
      entities: [{ name: 'Ferrier & Daughter', shop: null }],
    })
    const away = { party: engineShop, shop: glassShop }
    expect(press(partyDescribe, aRecord(), away, coachworks)).toMatchObject({
      conditions: [{ rule: 'input', field: 'shop' }],
    })
  })
})

describe('party.leave', () => {
  const leave = (record: ProjectRecord, party = engineShop, actor = coachworks) =>
    press(partyLeave, record, { party }, actor)

  it('marks when a party left', () => {
    expect(leave(aRecord())).toMatchObject({ entities: [{ id: engineShop, leftAt: at(100) }] })
    expect(leave(aRecord(), engineShop, engines)).toMatchObject({ outcome: 'changes' })
    expect(leave(aRecord(), engineShop, anActor(trimShop))).toEqual({ outcome: 'forbidden' })
  })

  it('refuses one that answers for something, has begun work, or has something coming', () => {
    const stage = aStage({ party: engineShop, state: 'ended' })
    const coming = aHandover({ state: 'released', from: lead, to: engineShop })
    const record = aRecord(anEngine({ custodian: engineShop }), stage, coming)
    expect(leave(record)).toMatchObject({
      conditions: [
        {
          rule: 'custody',
          entity: engineId,
          clearedBy: [engineShop],
          clearedWith: { command: 'handover.prepare', input: { to: lead } },
        },
        { rule: 'state', entity: stage.id, is: 'ended' },
        { rule: 'state', entity: coming.id, clearedWith: { command: 'handover.receive' } },
      ],
    })
  })

  it('keeps the lead and the owner', () => {
    expect(leave(aRecord(), lead)).toMatchObject({ conditions: [{ rule: 'input' }] })
    expect(leave(aRecord(), owner)).toMatchObject({ conditions: [{ rule: 'input' }] })
  })
})

describe('participant.add and participant.remove', () => {
  const halloran = anId('psn', 'halloran')
  const partaking: Participant = {
    kind: 'participant',
    id: anId('ptc', 'ines'),
    project: aProject().id,
    party: owner,
    person: halloran,
    since: at(0),
    removedAt: null,
  }
  const add = (party: string, person = halloran, record = aRecord(), actor = coachworks) =>
    press(participantAdd, record, { party, person }, actor)

  it('lets a person act for the owner', () => {
    expect(add(owner)).toMatchObject({
      entities: [{ ...partaking, id: expect.stringMatching(/^ptc_/), since: at(100) }],
    })
    expect(add(owner, halloran, aRecord(), engines)).toEqual({ outcome: 'forbidden' })
  })

  it("refuses a person twice, a shop's own people, and the lead's manager as the owner", () => {
    expect(add(owner, halloran, aRecord(partaking))).toMatchObject({
      conditions: [{ rule: 'exists', field: 'person' }],
    })
    expect(add(engineShop)).toMatchObject({ conditions: [{ rule: 'input', field: 'party' }] })
    expect(add(owner, coachworks.person)).toMatchObject({
      conditions: [{ rule: 'input', field: 'person' }],
    })
  })

  it("lets nobody but the owner bring in a second person for the owner's yes", () => {
    const second = anId('psn', 'second')
    expect(add(owner, second, aRecord(partaking))).toMatchObject({
      conditions: [
        {
          rule: 'input',
          field: 'party',
          clearedBy: [owner],
          clearedWith: { command: 'participant.add' },
        },
      ],
    })
    expect(add(owner, second, aRecord(partaking), ines)).toMatchObject({ outcome: 'changes' })
    const gone = { ...partaking, removedAt: at(3) }
    expect(add(owner, second, aRecord(gone))).toMatchObject({ outcome: 'changes' })
  })

  it('ends a part once', () => {
    const remove = (record: ProjectRecord, actor: Actor) =>
      press(participantRemove, record, { participant: partaking.id }, actor)
    const gone = { outcome: 'changes', entities: [{ ...partaking, removedAt: at(100) }] }
    expect(remove(aRecord(partaking), ines)).toEqual(gone)
    expect(remove(aRecord(partaking), engines)).toEqual({ outcome: 'forbidden' })
    expect(remove(aRecord({ ...partaking, removedAt: at(3) }), coachworks)).toMatchObject({
      conditions: [{ rule: 'state', is: 'removed' }],
    })
  })
})
