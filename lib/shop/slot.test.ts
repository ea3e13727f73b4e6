import { describe, expect, it } from 'vitest'
import {
  aContext,
  anActor,
  anId,
  aRecord,
  aShell,
  aStage,
  at,
  engineShop,
  lead,
  leadShop,
  owner,
  shellId,
  trimShop,
} from '../../test/builders.ts'
import { aBay, anOpenWindow, aShop, aShopBook, aSlot } from '../../test/shop-builders.ts'
import type { Actor } from '../record/actor.ts'
import type { Slot } from '../record/entities/things.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { slotAgree } from './slot-agree.ts'
import { slotClaim } from './slot-claim.ts'
import { slotRelease } from './slot-release.ts'
import { windowClose } from './window-close.ts'
import { windowOpen } from './window-open.ts'

const trimmer = anActor(trimShop)
const coachworks = anActor(lead)
const trimBay = aBay({ shop: anId('shp', 'trim'), name: 'Trim bay', type: 'trim bay' })
const floor = aBay({ name: 'Floor 2' })

const books = (...slots: Slot[]) =>
  new Map(
    [
      aShopBook(leadShop, aShop(), floor, ...slots.filter((slot) => slot.shop === leadShop)),
      aShopBook(trimBay.shop, trimBay, ...slots.filter((slot) => slot.shop === trimBay.shop)),
    ].map((book) => [book.id, book]),
  )
const contextOf = (actor: Actor, ...slots: Slot[]) =>
  aContext(actor, { shops: books(...slots), happenedAt: at(1) })

const inTrimBay = { assembly: shellId, bay: trimBay.id, shop: trimBay.shop }
const onTheFloor = { assembly: shellId, bay: floor.id, shop: leadShop }
const claim = (record: ProjectRecord, input: object, actor: Actor = trimmer, ...slots: Slot[]) =>
  slotClaim.apply(input, actor, record, contextOf(actor, ...slots))

describe('slot.claim', () => {
  const window = anOpenWindow({ from: at(24), to: at(240) })
  const hours = { from: at(30), to: at(60) }

  it('is agreed at once inside an open window, in the bay of the claimant', () => {
    const record = aRecord(aShell(), window)
    expect(claim(record, { ...inTrimBay, ...hours })).toMatchObject({
      outcome: 'changes',
      entities: [
        { kind: 'slot', state: 'agreed', party: trimShop, agreedBy: lead, window: window.id },
      ],
    })
  })

  it('is agreed up to the last minute of the window, and asked where it begins a minute early', () => {
    const record = aRecord(aShell(), window)
    expect(claim(record, { ...inTrimBay, from: at(24), to: at(240) })).toMatchObject({
      entities: [{ state: 'agreed' }],
    })
    expect(claim(record, { ...inTrimBay, from: at(23.98), to: at(240) })).toMatchObject({
      entities: [{ state: 'asked', agreedAt: null, agreedBy: null, window: null }],
    })
  })

  it('is asked where there is no window, where it is closed, and where it is for another assembly', () => {
    for (const windows of [
      [],
      [{ ...window, closedAt: at(2) }],
      [anOpenWindow({ assembly: anId('asm', 'bonnet') })],
    ]) {
      const record = aRecord(aShell(), windows)
      expect(claim(record, { ...inTrimBay, ...hours })).toMatchObject({
        entities: [{ state: 'asked' }],
      })
    }
  })

  it("takes the lead's bay where the window offers that bay", () => {
    const record = aRecord(aShell(), { ...window, bay: floor.id })
    expect(claim(record, { ...onTheFloor, ...hours })).toMatchObject({
      entities: [{ state: 'agreed', bay: floor.id, shop: leadShop, party: trimShop }],
    })
  })

  it("refuses another shop's bay that no window offers, and says the lead may open one", () => {
    const record = aRecord(aShell(), window)
    expect(claim(record, { ...onTheFloor, ...hours })).toMatchObject({
      outcome: 'refusal',
      conditions: [
        { rule: 'input', field: 'bay', clearedBy: [lead], clearedWith: { command: 'window.open' } },
      ],
    })
  })

  it('refuses a rival claim for the same hours, naming the hours and who has them', () => {
    const held = aSlot({
      ...hours,
      party: engineShop,
      bay: anId('bay', 'lift'),
      shop: anId('shp', 'engines'),
    })
    const record = aRecord(aShell(), window, held)
    expect(claim(record, { ...inTrimBay, from: at(59), to: at(80) })).toMatchObject({
      outcome: 'refusal',
      conditions: [
        {
          rule: 'slot-taken',
          what: 'assembly',
          entity: held.id,
          from: hours.from,
          to: hours.to,
          by: engineShop,
          clearedBy: [engineShop],
          clearedWith: { command: 'slot.release', input: { slot: held.id } },
        },
      ],
    })
  })

  it('begins in the moment in which another slot ends', () => {
    const held = aSlot({ ...hours, party: engineShop })
    const record = aRecord(aShell(), window, held)
    expect(claim(record, { ...inTrimBay, from: at(60), to: at(80) }, trimmer, held)).toMatchObject({
      outcome: 'changes',
    })
  })

  it('counts no slot that was only asked or has been released', () => {
    const slots = [aSlot({ ...hours, state: 'asked' }), aSlot({ ...hours, state: 'released' })]
    const record = aRecord(aShell(), window, slots)
    expect(claim(record, { ...inTrimBay, ...hours }, trimmer, ...slots)).toMatchObject({
      entities: [{ state: 'agreed' }],
    })
  })

  it("finds the bay busy with another project's car and says no more than that", () => {
    const other = aSlot({
      ...hours,
      project: anId('prj', 'dunmore'),
      bay: trimBay.id,
      shop: trimBay.shop,
      party: anId('pty', 'elsewhere'),
    })
    const answer = claim(aRecord(aShell(), window), { ...inTrimBay, ...hours }, trimmer, other)
    expect(answer).toMatchObject({
      conditions: [{ rule: 'slot-taken', what: 'bay', entity: trimBay.id, by: null }],
    })
    expect(JSON.stringify(answer)).not.toContain(other.id)
    expect(JSON.stringify(answer)).not.toContain('elsewhere')
  })

  it('is agreed at once where the lead claims a bay of its own', () => {
    expect(claim(aRecord(aShell()), { ...onTheFloor, ...hours }, coachworks)).toMatchObject({
      entities: [{ state: 'agreed', party: lead, agreedBy: lead }],
    })
  })

  it('is entered by the lead for a trimmer who telephones, and marked so', () => {
    const record = aRecord(aShell(), window)
    const input = { ...inTrimBay, ...hours, told: trimShop }
    expect(claim(record, input, coachworks)).toMatchObject({
      entities: [
        { kind: 'slot', party: trimShop },
        { kind: 'told', party: trimShop },
      ],
    })
    expect(claim(record, input, anActor(engineShop))).toEqual({ outcome: 'forbidden' })
  })

  it('is for shops, not for the owner', () => {
    const record = aRecord(aShell(), window)
    expect(claim(record, { ...inTrimBay, ...hours }, anActor(owner))).toEqual({
      outcome: 'forbidden',
    })
  })

  it("names a stage of the claimant's that works on the assembly", () => {
    const own = aStage({ party: trimShop, assemblies: [shellId] })
    const foreign = aStage({ party: engineShop, assemblies: [shellId] })
    const elsewhere = aStage({ party: trimShop, assemblies: [anId('asm', 'seat')] })
    const record = aRecord(aShell(), window, own, foreign, elsewhere)
    const of = (stage: string) => claim(record, { ...inTrimBay, ...hours, stage })
    expect(of(own.id)).toMatchObject({ entities: [{ stage: own.id }] })
    expect(of(foreign.id)).toMatchObject({ conditions: [{ field: 'stage' }] })
    expect(of(elsewhere.id)).toMatchObject({ conditions: [{ field: 'assembly' }] })
  })

  it('refuses a span that ends before it begins and a bay out of use', () => {
    const record = aRecord(aShell(), window)
    expect(claim(record, { ...inTrimBay, from: at(60), to: at(60) })).toMatchObject({
      conditions: [{ rule: 'time', field: 'to' }],
    })
    const retired = aShopBook(trimBay.shop, { ...trimBay, retiredAt: at(1) })
    const context = aContext(trimmer, {
      shops: new Map([[retired.id, retired]]),
      happenedAt: at(1),
    })
    expect(slotClaim.apply({ ...inTrimBay, ...hours }, trimmer, record, context)).toMatchObject({
      conditions: [{ rule: 'state', is: 'retired' }],
    })
  })

  it('refuses hours that are over when they are claimed', () => {
    const late = { ...contextOf(trimmer), happenedAt: at(60) }
    const record = aRecord(aShell(), window)
    expect(slotClaim.apply({ ...inTrimBay, ...hours }, trimmer, record, late)).toMatchObject({
      conditions: [{ rule: 'time', field: 'to', why: 'span is over' }],
    })
    const begun = { ...late, happenedAt: at(59) }
    expect(slotClaim.apply({ ...inTrimBay, ...hours }, trimmer, record, begun)).toMatchObject({
      outcome: 'changes',
    })
  })

  it("guesses nothing on a phone that doesn't hold the shop's diary", () => {
    const record = aRecord(aShell(), window)
    const answer = slotClaim.apply({ ...inTrimBay, ...hours }, trimmer, record, aContext(trimmer))
    expect(answer).toMatchObject({ outcome: 'unknown' })
  })
})

describe('slot.agree', () => {
  const asked = aSlot({
    state: 'asked',
    agreedAt: null,
    agreedBy: null,
    party: trimShop,
    bay: trimBay.id,
    shop: trimBay.shop,
  })
  const agree = (record: ProjectRecord, actor: Actor, ...slots: Slot[]) =>
    slotAgree.apply({ slot: asked.id }, actor, record, contextOf(actor, asked, ...slots))

  it("is the lead's", () => {
    const record = aRecord(aShell(), asked)
    expect(agree(record, coachworks)).toEqual({
      outcome: 'changes',
      entities: [{ ...asked, state: 'agreed', agreedAt: at(1), agreedBy: lead }],
    })
    expect(agree(record, trimmer)).toEqual({ outcome: 'forbidden' })
    expect(agree(record, anActor(lead, { role: 'hand' }))).toEqual({ outcome: 'forbidden' })
  })

  it('refuses when the shell has been given to another for these hours meanwhile', () => {
    const rival = aSlot({ from: at(40), to: at(50), party: engineShop })
    const record = aRecord(aShell(), asked, rival)
    expect(agree(record, coachworks, rival)).toMatchObject({
      conditions: [{ rule: 'slot-taken', what: 'assembly', by: engineShop }],
    })
  })

  it('refuses what is agreed already', () => {
    const record = aRecord(aShell(), { ...asked, state: 'agreed' as const })
    expect(agree(record, coachworks)).toMatchObject({
      conditions: [{ rule: 'state', is: 'agreed', needs: ['asked'] }],
    })
  })
})

describe('slot.release', () => {
  const slot = aSlot({ party: trimShop, bay: trimBay.id, shop: trimBay.shop })
  const release = (actor: Actor, record = aRecord(aShell(), slot)) =>
    slotRelease.apply(
      { slot: slot.id, reason: 'The hide is late.' },
      actor,
      record,
      contextOf(actor),
    )

  it('gives it back with a reason: the claimant or the lead', () => {
    const released = {
      outcome: 'changes',
      entities: [{ ...slot, state: 'released', reason: 'The hide is late.' }],
    }
    expect(release(trimmer)).toEqual(released)
    expect(release(coachworks)).toEqual(released)
    expect(release(anActor(engineShop))).toEqual({ outcome: 'forbidden' })
  })

  it('is not given back twice', () => {
    const record = aRecord(aShell(), { ...slot, state: 'released' as const })
    expect(release(trimmer, record)).toMatchObject({
      conditions: [{ rule: 'state', is: 'released' }],
    })
  })
})

describe('window.open and window.close', () => {
  const open = (input: object, actor: Actor = coachworks) =>
    windowOpen.apply(input, actor, aRecord(aShell()), contextOf(actor))
  const span = { assembly: shellId, from: at(24), to: at(48) }

  it('publishes a span of the shell, at a bay of its own if named', () => {
    expect(open(span)).toMatchObject({ entities: [{ kind: 'openWindow', bay: null, ...span }] })
    expect(open({ ...span, bay: floor.id })).toMatchObject({ entities: [{ bay: floor.id }] })
    expect(() => open({ ...span, bay: trimBay.id })).toThrow('There is no')
  })

  it('is for the lead, and for a span that lasts', () => {
    expect(open(span, trimmer)).toEqual({ outcome: 'forbidden' })
    expect(open({ ...span, to: at(24) })).toMatchObject({ conditions: [{ rule: 'time' }] })
  })

  it('closes once', () => {
    const window = anOpenWindow()
    const close = (record: ProjectRecord) =>
      windowClose.apply({ window: window.id }, coachworks, record, aContext(coachworks))
    expect(close(aRecord(aShell(), window))).toEqual({
      outcome: 'changes',
      entities: [{ ...window, closedAt: at(100) }],
    })
    expect(close(aRecord(aShell(), { ...window, closedAt: at(9) }))).toMatchObject({
      conditions: [{ rule: 'state', is: 'closed' }],
    })
  })
})
