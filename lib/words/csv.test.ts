import { describe, expect, it } from 'vitest'
import { aRecord } from '../../test/builders.ts'
import { readBuildOrder } from '../build-order/csv/read-build-order.ts'
import { csvFault, csvLeftOut } from './csv.ts'

const read = (text: string) => readBuildOrder(text, { record: aRecord(), people: [] })
const told = (text: string) =>
  read(text).faults.map((fault) => Object.values(csvFault(fault, 'en-GB')).join('. '))

describe('what is wrong in a build order, in words', () => {
  it('says where, what, the nearest name and the way out', () => {
    expect(
      told('stage,shop,after\nPrime,Tarn Lane Coachwork,\nPaint,Thistle & Welt,Prima'),
    ).toEqual([
      'Line 2, column “shop”. There is no shop “Tarn Lane Coachwork”. Did you mean “Tarn Lane Coachworks”? Correct the name, or accept it as a new party.',
      'Line 3, column “after”. There is no stage “Prima”. Did you mean “Prime”? Write the name as it stands in its line, or the number of that line.',
    ])
  })

  it('walks round a circle', () => {
    expect(told('stage,shop,after\nA,Thistle & Welt,B\nB,Thistle & Welt,A')).toEqual([
      'Line 2, column “after”. These stages wait for each other in a circle. 2 A › 3 B › 2 A. Leave out one of these links.',
    ])
  })

  it('tells of a decimal comma without quotes', () => {
    expect(told('stage,shop,hours least\nPrime,Thistle & Welt,1,5')).toEqual([
      'Line 2. There is more than the headings name: “5”. A text with the separator in it, or a decimal comma, stands in quotes.',
    ])
  })

  it('tells several of one name apart by their lines', () => {
    expect(
      told('stage,shop,after\nA,Thistle & Welt,\nA,Thistle & Welt,\nB,Thistle & Welt,A'),
    ).toEqual([
      'Line 4, column “after”. Several have the name “A”: lines 2 and 3. Write the number of the line, counted from the first under the headings.',
    ])
  })

  it('says why a line is left out', () => {
    const { leftOut } = read('stage,shop,after\nA,Nobody,\nB,Thistle & Welt,A')
    expect(leftOut.map(csvLeftOut)).toEqual([
      'Line 2, A: it has a fault',
      'Line 3, B: it waits for line 2, which is left out',
    ])
  })
})
