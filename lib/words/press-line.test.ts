import { describe, expect, it } from 'vitest'
import { aCheck, aRecord, aStage, at } from '../../test/builders.ts'
import { Instant } from '../record/scalars.ts'
import { inputLines, pressLine } from './press-line.ts'

describe('a press that is unsent', () => {
  const stage = aStage({ number: 41, name: 'Engine in' })
  const check = aCheck({ stage: stage.id, name: 'Oil pressure, hot' })
  const record = aRecord(stage, check)

  it('is named by its button and by what it is about', () => {
    expect(pressLine('stage.start', { stage: stage.id }, record)).toContain('Start 41')
    expect(pressLine('check.record', { check: check.id, value: 3.8 }, record)).toContain(
      'Oil pressure, hot',
    )
    expect(pressLine('note.write', { text: 'Later' }, null)).toBe('Write the note')
  })

  const reader = { locale: 'en-GB', timeZone: 'Europe/London', now: at(0), currency: 'GBP' }

  it('shows what was entered, and no ids', () => {
    expect(
      inputLines(
        {
          check: check.id,
          value: 3.8,
          text: 'Read twice',
          files: ['a', 'b'],
          remark: '',
          quantity: null,
          isFinal: true,
          isOpen: false,
        },
        reader,
      ),
    ).toEqual([
      { field: 'reading', value: '3.8' },
      { field: 'words', value: 'Read twice' },
      { field: 'photos and papers', value: '2' },
      { field: 'is final', value: 'yes' },
    ])
  })

  it('says who reads a note, and nothing that nobody typed', () => {
    const unread = { files: [], shownHash: 'a'.repeat(64), signature: 'M1 1L9 9' }
    expect(inputLines({ ...unread, sharing: 'shop' }, reader)).toEqual([
      { field: 'read by', value: 'your own shop alone' },
    ])
    expect(inputLines({ sharing: 'shared' }, reader)).toEqual([
      { field: 'read by', value: 'the other parties too' },
    ])
  })

  it('says sums in money, rates by the hundred, and days and times as the shop reads them', () => {
    expect(
      inputLines(
        {
          lines: [{ text: 'Jets', quantity: 4, unitPrice: 300, net: 1200, taxRate: 2000 }],
          standingConsentEach: 25000,
          promised: '2026-12-04',
          visitAt: '2026-12-04T09:30:00.000Z',
        },
        { ...reader, now: Instant.parse('2026-11-25T10:00:00.000Z') },
      ),
    ).toEqual([
      { field: 'words', value: 'Jets' },
      { field: 'quantity', value: '4' },
      { field: 'unit price', value: '£3.00' },
      { field: 'price', value: '£12.00' },
      { field: 'tax rate', value: '20 %' },
      { field: 'standing consent each', value: '£250.00' },
      { field: 'promised', value: 'Fri 4 Dec' },
      { field: 'visit at', value: 'Fri 4 Dec, 09:30' },
    ])
  })
})
