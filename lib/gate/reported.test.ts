import { describe, expect, it } from 'vitest'
import { anId } from '../../test/builders.ts'
import { plain, wrongState } from '../record/condition.ts'
import { readReported, writeReported } from './reported.ts'

describe('what was unmet when work was done outside the gate', () => {
  it('is kept with the stage and read again', () => {
    const order = anId('cho', 'seven')
    const conditions = [
      { ...plain(order), rule: 'change-order' as const, is: 'sent', number: 7 },
      wrongState(anId('hld', 'run'), 'set', 'released'),
    ]
    expect(readReported(writeReported(conditions))).toEqual([
      { rule: 'change-order', entity: order },
      { rule: 'state', entity: 'hld_run' },
    ])
  })

  it('is nothing where all was met, or nothing was reported', () => {
    expect(writeReported([])).toMatch(/\S/)
    expect(readReported(writeReported([]))).toEqual([])
    expect(readReported(null)).toEqual([])
  })

  it('fits the record however much was unmet', () => {
    const long = anId('stg', 'a'.repeat(48))
    const many = Array.from({ length: 500 }, () => wrongState(long, 'planned', 'signed off'))
    expect(writeReported(many).length).toBeLessThanOrEqual(8000)
  })
})
