import { describe, expect, it } from 'vitest'
import { aCheck, aRecord, aStage } from '../../test/builders.ts'
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

  it('shows what was entered, and no ids', () => {
    expect(
      inputLines({
        check: check.id,
        value: 3.8,
        text: 'Read twice',
        files: ['a', 'b'],
        remark: '',
        lines: [{ text: 'Jets', net: 1200 }],
      }),
    ).toEqual([
      { field: 'value', value: '3.8' },
      { field: 'text', value: 'Read twice' },
      { field: 'files', value: '2' },
      { field: 'text', value: 'Jets' },
      { field: 'net', value: '1200' },
    ])
  })
})
