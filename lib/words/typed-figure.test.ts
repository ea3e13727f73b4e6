import { describe, expect, it } from 'vitest'
import { readQuantity } from './read-amount.ts'
import { type PadKey, typedAfter } from './typed-figure.ts'

const typed = (keys: readonly PadKey[], decimal?: string) =>
  keys.reduce((so, key) => typedAfter(so, key, decimal), '')

describe('typedAfter', () => {
  it('types a reading with the reader’s own decimal sign, which is read as it stands', () => {
    expect(typed(['3', 'decimal', '9'], '.')).toBe('3.9')
    expect(typed(['3', 'decimal', '9'], ',')).toBe('3,9')
    expect(readQuantity(typed(['3', 'decimal', '9'], ','))).toBe(3.9)
  })

  it('puts the nought before a sign that is typed first', () => {
    expect(typed(['decimal', '0', '8'])).toBe('0.08')
    expect(typed(['minus', 'decimal', '5'])).toBe('−0.5')
    expect(readQuantity(typed(['minus', 'decimal', '5']))).toBe(-0.5)
  })

  it('takes one sign only, whichever the keyboard typed', () => {
    expect(typedAfter('3,9', 'decimal', '.')).toBe('3,9')
  })

  it('turns to minus and back', () => {
    expect(typedAfter('4', 'minus')).toBe('−4')
    expect(typedAfter('−4', 'minus')).toBe('4')
    expect(typedAfter('-4', 'minus')).toBe('4')
  })

  it('rubs out the last one, and all of it', () => {
    expect(typedAfter('3.9', 'back')).toBe('3.')
    expect(typedAfter('', 'back')).toBe('')
    expect(typedAfter('3.9', 'clear')).toBe('')
  })

  it('takes no figures without end', () => {
    expect(typed(Array.from({ length: 40 }, () => '7' as const))).toHaveLength(15)
  })
})
