import { distance } from 'fastest-levenshtein'
import { describe, expect, it } from 'vitest'
import {
  aContext,
  anActor,
  anEngine,
  anId,
  aRecord,
  aShell,
  aStage,
  engineId,
  engineShop,
  lead,
  owner,
  shellId,
  trimShop,
} from '../../../test/builders.ts'
import { projectAfter } from '../../record/project-record.ts'
import { buildOrderImport } from '../build-order-import.ts'
import { readBuildOrder } from './read-build-order.ts'
import { writeBuildOrder } from './write-build-order.ts'

const record = aRecord(aShell(), anEngine())
const people = [
  { person: anId('psn', 'jory'), party: engineShop, name: 'Jory Penhale' },
  { person: anId('psn', 'jory2'), party: trimShop, name: 'Jory Penhale' },
  { person: anId('psn', 'ada'), party: engineShop, name: 'Ada Thorne' },
]
const read = (text: string, over: object = {}) => readBuildOrder(text, { record, people, ...over })
const headings = 'stage,shop,assembly,hours least,hours likely,hours most,after,checks,hold'
const withHeadings = (...lines: string[]) => [headings, ...lines].join('\r\n')

describe('a build order from a spreadsheet', () => {
  it('is read in full', () => {
    const { faults, input } = read(
      withHeadings(
        'Bore the block,Bexwater Engines,Engine,8,12.5,20,,reading bore 87.01..87.03 mm|photo each side,witness: Ada Thorne',
        'Prime,Tarn Lane Coachworks,Shell,,,,,,hold: owner',
        'Engine in,Tarn Lane Coachworks,Shell | Engine,,6,,Prime +16h <72h | 1,tick edges padded,',
      ),
    )
    expect(faults).toEqual([])
    expect(input).toEqual({
      parties: [],
      assemblies: [],
      stages: [
        {
          key: 'line2',
          name: 'Bore the block',
          party: engineShop,
          assemblies: [engineId],
          hoursLeast: 8,
          hoursLikely: 12.5,
          hoursMost: 20,
        },
        expect.objectContaining({ key: 'line3', party: lead, assemblies: [shellId] }),
        expect.objectContaining({ key: 'line4', assemblies: [shellId, engineId], hoursLikely: 6 }),
      ],
      links: [
        { from: 'line3', to: 'line4', leastLagHours: 16, greatestLagHours: 72 },
        { from: 'line2', to: 'line4', leastLagHours: 0, greatestLagHours: null },
      ],
      checks: [
        {
          stage: 'line2',
          type: 'reading',
          name: 'bore',
          unit: 'mm',
          least: 87.01,
          greatest: 87.03,
        },
        {
          stage: 'line2',
          type: 'photo',
          name: 'each side',
          unit: null,
          least: null,
          greatest: null,
        },
        {
          stage: 'line4',
          type: 'tick',
          name: 'edges padded',
          unit: null,
          least: null,
          greatest: null,
        },
      ],
      holds: [
        {
          stage: 'line2',
          point: 'witness',
          name: 'Bore the block',
          party: engineShop,
          person: anId('psn', 'ada'),
        },
        { stage: 'line3', point: 'hold', name: 'Prime', party: owner, person: null },
      ],
    })
  })

  it('has its columns in any order and case, others named and left aside, semicolons and decimal commas', () => {
    const { faults, input, ignoredColumns } = read(
      'Paid by;SHOP;Hours Likely;Stage;Colour\r\nx;bexwater engines;1,5;Bore;\r\n\r\n',
    )
    expect(faults).toEqual([])
    expect(ignoredColumns).toEqual(['Paid by', 'Colour'])
    expect(input?.stages).toMatchObject([{ name: 'Bore', party: engineShop, hoursLikely: 1.5 }])
  })

  it('counts lines from the first under the headings, blank ones too, as the spreadsheet shows them', () => {
    const { faults, input } = read(
      '\nstage,shop,after\nPrime,Tarn Lane Coachworks,\n\nPaint,Tarn Lane Coachworks,1\nRub,Tarn Lane Coachworks,3\nFlat,Tarn Lane Coachworks,2\n',
    )
    expect(input?.links).toMatchObject([
      { from: 'line3', to: 'line5' },
      { from: 'line5', to: 'line6' },
    ])
    expect(faults).toEqual([{ line: 7, column: 'after', what: 'no stage on line', number: 2 }])
  })

  it('may wait for a stage that the record has', () => {
    const strip = aStage({ name: 'Strip the shell' })
    const { input } = read('stage,shop,after\nPrime,Tarn Lane Coachworks,Strip the shell +2h', {
      record: aRecord(strip),
    })
    expect(input?.links).toMatchObject([{ from: strip.id, to: 'line2', leastLagHours: 2 }])
  })

  it('says all that is wrong at once, by line and column, with the nearest name', () => {
    const { faults } = read(
      withHeadings(
        'Prime,Tarn Lane Coachwork,Shell,3,2,x,,foto each side,hold: Inés Haloran',
        'Paint,Tarn Lane Coachworks,Shell|Shell,,,,Primer | Prime +9h <1h,reading film 90 .. 130 µm,witness: Jory Penhale',
        ',,,-1,,,,,',
        'Polish,Tarn Lane Coachworks,,,,,Polish,,,,9',
      ),
    )
    expect(faults.map(({ line, column, what }) => [line, column, what])).toEqual([
      [2, 'shop', 'unknown'],
      [2, 'hours likely', 'hours go down'],
      [2, 'hours most', 'not a number'],
      [2, 'checks', 'unknown'],
      [2, 'hold', 'unknown'],
      [3, 'assembly', 'twice'],
      [3, 'after', 'lags cross'],
      [3, 'after', 'unknown'],
      [3, 'checks', 'limits with blanks'],
      [3, 'hold', 'ambiguous'],
      [4, 'stage', 'empty'],
      [4, 'shop', 'empty'],
      [4, 'hours least', 'not hours'],
      [5, null, 'too many cells'],
      [5, 'after', 'itself'],
    ])
    expect(faults.flatMap((fault) => (fault.what === 'unknown' ? [fault.nearest] : []))).toEqual([
      'Tarn Lane Coachworks',
      'photo',
      'Ines Halloran',
      'Prime',
    ])
  })

  it('names a circle, and leaves out all that stands in it or behind it', () => {
    const { faults, leftOut, input } = read(
      'stage,shop,after\nA,Tarn Lane Coachworks,C\nB,Tarn Lane Coachworks,A\nC,Tarn Lane Coachworks,B\nD,Tarn Lane Coachworks,C\nE,Tarn Lane Coachworks,',
    )
    expect(faults).toEqual([
      {
        line: 2,
        column: 'after',
        what: 'circle',
        stages: [
          { line: 2, name: 'A' },
          { line: 3, name: 'B' },
          { line: 4, name: 'C' },
        ],
      },
    ])
    expect(leftOut).toEqual([
      { line: 2, name: 'A', behind: null },
      { line: 3, name: 'B', behind: 2 },
      { line: 4, name: 'C', behind: 3 },
      { line: 5, name: 'D', behind: 4 },
    ])
    expect(input?.stages.map((stage) => stage.name)).toEqual(['E'])
  })

  it('leaves out what waits for a faulty line: it could begin too early without it', () => {
    const { leftOut, input } = read(
      'stage,shop,after\nPrime,Nobody,\nPaint,Tarn Lane Coachworks,Prime\nTrim,Thistle & Welt,',
    )
    expect(leftOut).toEqual([
      { line: 2, name: 'Prime', behind: null },
      { line: 3, name: 'Paint', behind: 2 },
    ])
    expect(input?.stages.map((stage) => stage.name)).toEqual(['Trim'])
    expect(input?.links).toEqual([])
  })

  it("makes new assemblies in the lead's custody, and asks whether another was meant", () => {
    const { newAssemblies, input } = read(
      'stage,shop,assembly\nPrime,Tarn Lane Coachworks,Shel\nPlate,Bexwater Engines,Brightwork | Shel',
    )
    expect(newAssemblies).toEqual([
      { name: 'Shel', custodian: lead, nearest: 'Shell', lines: [2, 3] },
      { name: 'Brightwork', custodian: lead, nearest: null, lines: [3] },
    ])
    expect(input?.assemblies).toEqual([
      { key: 'assembly1', name: 'Shel', custodian: lead },
      { key: 'assembly2', name: 'Brightwork', custodian: lead },
    ])
  })

  it('takes an unknown shop for a new party only where that was accepted', () => {
    const text = 'stage,shop,hold\nPlate,Northgate Plating,hold: Northgate Plating'
    const refused = read(text)
    expect(refused.unknownShops).toEqual([{ name: 'Northgate Plating', nearest: null, lines: [2] }])
    expect(refused.input).toBeNull()
    const { faults, input } = read(text, { accept: { shops: ['northgate plating'] } })
    expect(faults).toEqual([])
    expect(input).toMatchObject({
      parties: [{ key: 'party1', name: 'Northgate Plating' }],
      stages: [{ party: 'party1' }],
      holds: [{ party: 'party1', person: null }],
    })
  })

  it('refuses a stage that the record has, unless that was accepted', () => {
    const there = aRecord(aStage({ name: 'Prime', number: 7 }))
    const text = 'stage,shop\nprime,Tarn Lane Coachworks'
    expect(read(text, { record: there }).faults).toEqual([
      { line: 2, column: 'stage', what: 'exists', name: 'prime', number: 7 },
    ])
    const accepted = read(text, { record: there, accept: { existing: true } })
    expect(accepted.faults).toEqual([])
    expect(accepted.input?.acceptExisting).toBe(true)
  })

  it('tells which of two persons, a role, and a person called as a party', () => {
    const holds = (who: string) => read(`stage,shop,hold\nA,Thistle & Welt,hold: ${who}`)
    expect(holds('Jory Penhale (Thistle & Welt)').input?.holds).toMatchObject([
      { party: trimShop, person: anId('psn', 'jory2') },
    ])
    expect(holds('Lead').input?.holds).toMatchObject([{ party: lead, person: null }])
    expect(holds('Ines Halloran').input?.holds).toMatchObject([{ party: owner, person: null }])
    expect(holds('shop').faults).toMatchObject([{ what: 'ambiguous', kind: 'who' }])
  })

  it('names readings that nothing limits, as a dash for two dots loses the limits', () => {
    const { withoutLimits } = read(
      'stage,shop,checks\nA,Thistle & Welt,reading oil pressure 3.1-4.5 bar | reading gap 1..2 mm',
    )
    expect(withoutLimits).toEqual([{ line: 2, name: 'oil pressure 3.1-4.5 bar' }])
  })

  it('has headings, a stage and a shop column, each once, and closed quotes', () => {
    expect(read('').faults).toMatchObject([{ what: 'no headings' }])
    expect(read('Prime,Tarn Lane\n').faults).toMatchObject([{ what: 'no headings', line: 1 }])
    expect(read('stage,stage,after\n').faults).toMatchObject([
      { what: 'column missing', name: 'shop' },
      { what: 'column twice', name: 'stage' },
    ])
    expect(read('stage,shop\n"Prime,x\n').faults).toMatchObject([{ what: 'quote' }])
    expect(read('stage,shop\n').input).toBeNull()
  })

  it('has at most as many lines as one import takes', () => {
    const { faults, input } = read(`stage,shop\n${'A,Thistle & Welt\n'.repeat(20_001)}`)
    expect(faults).toMatchObject([{ what: 'too many lines', lines: 20_001, most: 20_000 }])
    expect(input).toBeNull()
  })
})

describe('five thousand lines', () => {
  const lines = (count: number) =>
    Array.from(
      { length: count },
      (_, i) =>
        `Stage number ${i},Bexwater Engine ${i},Assembly ${i % 50},1,2,3,Stage numbre ${i + 1},,`,
    )
  const measured = (count: number) => {
    let comparisons = 0
    const { faults } = readBuildOrder(withHeadings(...lines(count)), { record, people }, (a, b) => {
      comparisons++
      return distance(a, b)
    })
    expect(faults).toHaveLength(2 * count)
    return comparisons
  }

  it('with two faults each are no more work a line than a thousand', () => {
    const few = measured(1000) / 1000
    expect(measured(5000) / 5000).toBeLessThan(few * 1.5)
  })

  it('in one chain are imported, exported and read again', () => {
    const chain = Array.from(
      { length: 5000 },
      (_, i) => `Stage ${i},Tarn Lane Coachworks,Shell,,,,${i === 0 ? '' : `${i} +1h`},tick done,`,
    )
    const actor = anActor(lead)
    const { input, faults } = read(withHeadings(...chain))
    expect(faults).toEqual([])
    const applied = buildOrderImport.apply(input, actor, record, aContext(actor))
    if (applied.outcome !== 'changes') throw new Error(applied.outcome)
    const after = projectAfter(record, { version: 2, entities: applied.entities })
    const again = read(writeBuildOrder(after))
    expect(again.input?.links).toEqual(input?.links)
    expect(again.input?.stages).toEqual(input?.stages)
  })
})
