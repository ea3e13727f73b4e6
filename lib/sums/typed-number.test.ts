import { expect, test } from 'vitest'
import { readTypedNumber } from './typed-number.ts'

test('a figure is read with the decimal sign of the reader’s language', () => {
  expect(readTypedNumber('3.9', '.')).toEqual({ is: 'number', value: 3.9 })
  expect(readTypedNumber(' 3,9 ', ',')).toEqual({ is: 'number', value: 3.9 })
  expect(readTypedNumber('−4', '.')).toEqual({ is: 'number', value: -4 })
  expect(readTypedNumber('0,125', ',')).toEqual({ is: 'number', value: 0.125 })
  expect(readTypedNumber('0.0015', ',')).toEqual({ is: 'number', value: 0.0015 })
})

test('“1,234” is asked about, not guessed, and each answer can be read', () => {
  expect(readTypedNumber('1,234', '.')).toEqual({ is: 'doubtful', meant: ['1.2340', '1234'] })
  expect(readTypedNumber('1,234', ',')).toEqual({ is: 'doubtful', meant: ['1,2340', '1234'] })
  expect(readTypedNumber('1.234', ',')).toEqual({ is: 'doubtful', meant: ['1,2340', '1234'] })
  expect(readTypedNumber('1.234', '.')).toEqual({ is: 'number', value: 1.234 })
  expect(readTypedNumber('1,2340', ',')).toEqual({ is: 'number', value: 1.234 })
  expect(readTypedNumber('12,345,678', '.')).toEqual({ is: 'doubtful', meant: ['12345678'] })
})

test('a comma where the language has a point is asked about', () => {
  expect(readTypedNumber('3,9', '.')).toEqual({ is: 'doubtful', meant: ['3.9'] })
})

test('words, two signs, nothing and figures without end are no number', () => {
  for (const typed of ['', 'ten', '1.2.3', '4 mm', 'NaN', 'Infinity', `1${'0'.repeat(400)}`])
    expect(readTypedNumber(typed, '.'), typed).toEqual({ is: 'no number' })
})
