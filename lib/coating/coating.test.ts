import { describe, expect, it } from 'vitest'
import {
  anActor,
  anAssembly,
  anId,
  aRecord,
  aShell,
  aStage,
  at,
  engineShop,
  lead,
  owner,
  shellId,
  theParties,
} from '../../test/builders.ts'
import { aCoat, aColour, aFilm } from '../../test/coating-builders.ts'
import { press, pressed } from '../../test/press.ts'
import { all } from '../record/table.ts'
import { behindShell } from './behind.ts'
import { coatCorrect } from './coat-correct.ts'
import { coatRecord } from './coat-record.ts'
import { coatStrip } from './coat-strip.ts'
import { colourAdd } from './colour-add.ts'
import { colourCardAgreed } from './colour-card-agreed.ts'
import { colourDescribe } from './colour-describe.ts'
import { colourRemove } from './colour-remove.ts'
import { filmPoints } from './film-map.ts'
import { filmRecord } from './film-record.ts'
import { formulaOf } from './formula.ts'
import { stackOf } from './stack.ts'

const ada = anActor(lead)
const ines = anActor(owner, { role: 'owner' })
const reason = 'read off the tin again'
const spraying = aStage({
  party: lead,
  assemblies: [shellId],
  lays: 'colour',
  state: 'ended',
  startedAt: at(1),
  endedAt: at(9),
})
const yard = aRecord(theParties(), aShell({ custodian: lead }), spraying)

describe('coat.record', () => {
  const input = { assembly: shellId, stage: spraying.id, product: 'colour' }

  it('keeps what was laid, with its end; the end of the work stands where nothing else is said', () => {
    expect(
      press(coatRecord, ada, yard, { ...input, coats: 3, ratio: '2:1', batch: 'A 7' }),
    ).toMatchObject({
      entities: [
        { product: 'colour', coats: 3, ratio: '2:1', batch: 'A 7', endedAt: at(9), thinner: null },
      ],
    })
    expect(press(coatRecord, ada, yard, { ...input, endedAt: at(6) })).toMatchObject({
      entities: [{ endedAt: at(6), stage: spraying.id, party: lead }],
    })
  })

  it('refuses an end before the work began, after it ended or in the future', () => {
    const ended = (hours: number) =>
      press(coatRecord, ada, yard, { ...input, endedAt: at(hours) }, { now: at(100) })
    expect(ended(0)).toMatchObject({ conditions: [{ rule: 'time', why: 'before the start' }] })
    expect(ended(10)).toMatchObject({ conditions: [{ rule: 'time', why: 'after the end' }] })
    expect(
      press(
        coatRecord,
        ada,
        yard,
        { assembly: shellId, product: 'wax', endedAt: at(101) },
        { now: at(100) },
      ),
    ).toMatchObject({ conditions: [{ rule: 'time', why: 'in the future', limit: at(100) }] })
  })

  it('refuses a stage that hasn’t begun or doesn’t work on it', () => {
    const planned = aRecord(theParties(), aShell({ custodian: lead }), {
      ...spraying,
      state: 'planned',
    })
    expect(press(coatRecord, ada, planned, input)).toMatchObject({
      conditions: [{ rule: 'state', is: 'planned' }],
    })
    const door = anAssembly({ custodian: lead })
    const withDoor = aRecord(theParties(), aShell({ custodian: lead }), door, spraying)
    expect(press(coatRecord, ada, withDoor, { ...input, assembly: door.id })).toMatchObject({
      conditions: [{ rule: 'input', field: 'assembly' }],
    })
  })

  it('keeps also what should not have gone on: a fact is never refused', () => {
    const etched = aRecord(
      theParties(),
      aShell({ custodian: lead }),
      aCoat({ product: 'etch primer' }),
    )
    expect(press(coatRecord, ada, etched, { assembly: shellId, product: 'filler' }).outcome).toBe(
      'changes',
    )
  })

  it('is for the party that does the work; the lead enters what was told by phone', () => {
    const theirs = aRecord(theParties(), aShell({ custodian: engineShop }))
    const wax = { assembly: shellId, product: 'wax' }
    expect(press(coatRecord, ada, theirs, wax).outcome).toBe('forbidden')
    expect(press(coatRecord, ada, theirs, { ...wax, told: engineShop })).toMatchObject({
      entities: [
        { by: null, party: engineShop },
        { kind: 'told', party: engineShop },
      ],
    })
  })

  it('refuses a colour on lacquer and one that is off the list', () => {
    const colour = aColour({ removedAt: at(1) })
    const record = aRecord(theParties(), aShell({ custodian: lead }), colour)
    expect(
      press(coatRecord, ada, record, { assembly: shellId, product: 'lacquer', colour: colour.id }),
    ).toMatchObject({ conditions: [{ field: 'colour' }, { field: 'colour' }] })
  })
})

describe('coat.correct and coat.strip', () => {
  const [epoxy, build, isolator] = [
    aCoat({ endedAt: at(1) }),
    aCoat({ product: 'high build', endedAt: at(2) }),
    aCoat({ product: 'isolator', endedAt: at(3) }),
  ]
  const record = aRecord(theParties(), aShell({ custodian: lead }), isolator, epoxy, build)

  it('corrects with a reason; what isn’t said stays', () => {
    expect(press(coatCorrect, ada, record, { coat: epoxy.id, batch: 'E 4', reason })).toMatchObject(
      {
        entities: [{ ...epoxy, batch: 'E 4' }],
      },
    )
    expect(press(coatCorrect, ada, record, { coat: epoxy.id, batch: 'E 4' }).outcome).toBe(
      'invalid',
    )
  })

  it('takes off what lies over the layer that stays', () => {
    const after = pressed(coatStrip, ada, record, { assembly: shellId, downTo: epoxy.id, reason })
    expect(stackOf(after, shellId).map(({ id }) => id)).toEqual([epoxy.id])
    expect(all(after.coats)).toHaveLength(3)
    const bare = pressed(coatStrip, ada, after, { assembly: shellId, downTo: null, reason })
    expect(stackOf(bare, shellId)).toEqual([])
    expect(press(coatStrip, ada, bare, { assembly: shellId, downTo: null, reason })).toMatchObject({
      conditions: [{ rule: 'state', is: 'bare to there' }],
    })
  })

  it('sanded through at one place, the stack stays', () => {
    const after = pressed(coatStrip, ada, record, {
      assembly: shellId,
      downTo: null,
      place: 'rear edge',
      reason,
    })
    expect(stackOf(after, shellId)).toMatchObject([
      { id: epoxy.id },
      { id: build.id },
      { id: isolator.id, sandedTo: 'bare metal', sandedPlace: 'rear edge' },
    ])
  })

  it('refuses a layer of another assembly, and a time before the coat', () => {
    const strange = aCoat({ assembly: anId('asm', 'door') })
    const more = aRecord(theParties(), aShell({ custodian: lead }), epoxy, strange)
    expect(
      press(coatStrip, ada, more, { assembly: shellId, downTo: strange.id, reason }),
    ).toMatchObject({ conditions: [{ field: 'downTo' }] })
    expect(
      press(coatStrip, ada, more, { assembly: shellId, downTo: null, at: at(0), reason }),
    ).toMatchObject({ conditions: [{ rule: 'time', why: 'before the start' }] })
  })
})

describe('film.record', () => {
  const readings = [
    { panel: 'Roof', point: '1', microns: 118.5 },
    { panel: 'Left door', point: '1', microns: 131 },
  ]
  const input = { assembly: shellId, metal: 'steel', method: 'magnetic', zeroed: true, readings }

  it('keeps several panels and points at once, at full precision', () => {
    expect(press(filmRecord, ada, yard, input)).toMatchObject({
      entities: [
        { panel: 'Roof', microns: 118.5 },
        { panel: 'Left door', microns: 131 },
      ],
    })
  })

  it('B13: refuses a magnetic gauge on aluminium and an eddy-current one on steel', () => {
    for (const [metal, method] of [
      ['aluminium', 'magnetic'],
      ['steel', 'eddy current'],
    ])
      expect(press(filmRecord, ada, yard, { ...input, metal, method })).toMatchObject({
        conditions: [{ rule: 'input', field: 'method' }],
      })
  })

  it('maps the last reading of each point and keeps those before', () => {
    const record = aRecord(
      theParties(),
      aShell(),
      aCoat({ product: 'colour', endedAt: at(1) }),
      aCoat({ product: 'lacquer', endedAt: at(3) }),
      aFilm({ microns: 100, at: at(2) }),
      aFilm({ microns: 158, at: at(9) }),
      aFilm({ panel: 'Left door', microns: 140, at: at(9) }),
    )
    expect(filmPoints(record, shellId)).toMatchObject([
      { panel: 'Roof', last: { microns: 158 }, before: [{ microns: 100 }], lacquer: 58 },
      { panel: 'Left door', last: { microns: 140 }, before: [], lacquer: null },
    ])
  })
})

describe('the colour of the car', () => {
  const tinters = [
    { name: 'White base', grams: 812.4 },
    { name: 'Yellow oxide', grams: 9.6, batch: 'Y 3' },
  ]
  const kept = pressed(colourAdd, ada, yard, { name: 'Ivory', tinters })
  const colour = all(kept.colours)[0]
  const id = colour?.id

  it('keeps its formula in the order in which it is weighed', () => {
    expect(id && formulaOf(kept, id)).toMatchObject([
      { position: 1, name: 'White base', grams: 812.4, batch: null },
      { position: 2, grams: 9.6, batch: 'Y 3' },
    ])
    expect(press(colourAdd, ada, kept, { name: 'Ivory' })).toMatchObject({
      conditions: [{ rule: 'exists', field: 'name' }],
    })
  })

  it('no shop agrees to the card for the owner; the lead enters what the owner told', () => {
    expect(press(colourCardAgreed, ada, kept, { colour: id }).outcome).toBe('forbidden')
    expect(press(colourCardAgreed, ada, kept, { colour: id, told: owner })).toMatchObject({
      entities: [{ cardBy: null }, { kind: 'told' }],
    })
    expect(press(colourCardAgreed, ines, kept, { colour: id })).toMatchObject({
      entities: [{ cardBy: ines.person }],
    })
  })

  it('another formula needs another card; the first formula stays in the record', () => {
    const agreed = pressed(colourCardAgreed, ines, kept, { colour: id })
    const renamed = pressed(colourDescribe, ada, agreed, { colour: id, gun: '1.3 mm, 2 bar' })
    expect(all(renamed.colours)[0]?.cardAt).not.toBeNull()
    const again = pressed(colourDescribe, ada, agreed, {
      colour: id,
      tinters: [{ name: 'White base', grams: 800 }],
    })
    expect(all(again.colours)[0]?.cardAt).toBeNull()
    expect(all(again.tinters)).toHaveLength(3)
    expect(id && formulaOf(again, id)).toMatchObject([{ grams: 800 }])
  })

  it('stays on the list while it lies on the car', () => {
    const on = pressed(coatRecord, ada, kept, { assembly: shellId, product: 'colour', colour: id })
    expect(press(colourRemove, ada, on, { colour: id, reason })).toMatchObject({
      conditions: [{ rule: 'state', is: 'on the car' }],
    })
    expect(press(colourRemove, ada, kept, { colour: id, reason }).outcome).toBe('changes')
  })
})

describe('a panel behind its shell', () => {
  const ivory = anId('clr', 'ivory')
  const shell = [
    aCoat({ endedAt: at(1) }),
    aCoat({ product: 'colour', colour: ivory, batch: 'A 7', endedAt: at(2) }),
    aCoat({ product: 'lacquer', endedAt: at(3) }),
  ]
  const panel = (batch: string | null, colour = ivory) => [
    aCoat({ endedAt: at(1) }),
    aCoat({ product: 'colour', colour, batch, endedAt: at(20) }),
  ]

  it('names what it still lacks', () => {
    expect(behindShell(shell, panel('A 7'))).toMatchObject([
      { product: 'lacquer', what: 'missing' },
    ])
  })

  it('matches a colour by formula and batch; a batch that nobody recorded matches nothing', () => {
    const at2 = (on: readonly ReturnType<typeof aCoat>[]) => behindShell(shell, on)[0]?.what
    expect(at2(panel('A 8'))).toBe('other batch')
    expect(at2(panel(null))).toBe('batch not recorded')
    expect(at2(panel('A 7', anId('clr', 'other')))).toBe('other colour')
  })
})
