import { describe, expect, it } from 'vitest'
import { readAfter, writeAfter } from './after-cell.ts'
import { plainText, things } from './cell.ts'
import { readCheck, writeCheck } from './check-cell.ts'
import { readFigure } from './figures.ts'
import { readHold } from './hold-cell.ts'

describe('several things in a cell', () => {
  it('are separated by bars, and empty ones are left out', () => {
    expect(things(' Shell | Engine||  ')).toEqual(['Shell', 'Engine'])
  })

  it('keep a bar behind a backslash', () => {
    expect(things('Wet\\|dry | Rub').map(plainText)).toEqual(['Wet|dry', 'Rub'])
    expect(things('a\\\\|b').map(plainText)).toEqual(['a\\', 'b'])
  })
})

describe('a number in a cell', () => {
  it.each([
    ['1.5', 1.5],
    ['1,5', 1.5],
    [' 12 ', 12],
    ['1 234,5', 1234.5],
    ['1.234,5', 1234.5],
    ['1,234.5', 1234.5],
    ['-3,125', -3.125],
    ['1e-7', 1e-7],
  ])('is read with decimal point or comma: %s', (text, value) => {
    expect(readFigure(text)).toBe(value)
  })

  it.each(['', 'six', '1,2,3', '1..2', '1 2', '1e999'])('is not read out of %s', (text) => {
    expect(readFigure(text)).toBeNull()
  })
})

describe('what a stage waits for', () => {
  it('is a name, or a number of a line', () => {
    expect(readAfter('Prime')).toEqual({
      stage: { name: 'Prime' },
      leastLagHours: 0,
      greatestLagHours: null,
    })
    expect(readAfter('12')).toMatchObject({ stage: { number: 12 } })
  })

  it('has a least and a greatest lag, in either order, with or without blanks', () => {
    const lags = { leastLagHours: 24, greatestLagHours: 72.5 }
    expect(readAfter('Prime +24h <72.5h')).toMatchObject({ stage: { name: 'Prime' }, ...lags })
    expect(readAfter('3<72,5h+24h')).toMatchObject({ stage: { number: 3 }, ...lags })
  })

  it('is refused with the window shut before the cure has run, or two lags of one kind', () => {
    expect(readAfter('Prime +72h <24h')).toMatchObject({ what: 'lags cross' })
    expect(readAfter('Prime +2h +3h')).toMatchObject({ what: 'lag twice' })
    expect(readAfter('+24h')).toMatchObject({ what: 'empty' })
  })

  it('may have a plus or a less-than in its name', () => {
    const after = { stage: { name: 'Coat +2h' }, leastLagHours: 3, greatestLagHours: null }
    expect(writeAfter(after)).toBe('Coat \\+2h +3h')
    expect(readAfter('Coat \\+2h +3h')).toEqual(after)
  })
})

describe('a check in a cell', () => {
  const reading = { type: 'reading', unit: null, least: null, greatest: null }

  it('is a reading with limits and a unit', () => {
    const check = { ...reading, name: 'oil pressure', least: 3.1, greatest: 4.5, unit: 'bar' }
    expect(readCheck('reading oil pressure 3.1..4.5 bar')).toEqual(check)
    expect(readCheck('Reading oil pressure 3,1..4,5 bar')).toEqual(check)
  })

  it('is limited on one side, or on none', () => {
    expect(readCheck('reading film thickness 80.. µm')).toMatchObject({ least: 80, greatest: null })
    expect(readCheck('reading runout ..0.05 mm')).toMatchObject({ least: null, greatest: 0.05 })
    expect(readCheck('reading mileage .. miles')).toMatchObject({ name: 'mileage', unit: 'miles' })
    expect(readCheck('reading mileage')).toEqual({ ...reading, name: 'mileage' })
  })

  it('is a photo, a tick or a document by name', () => {
    const none = { unit: null, least: null, greatest: null }
    expect(readCheck('photo each side')).toEqual({ type: 'photo', name: 'each side', ...none })
    expect(readCheck('tick edges padded')).toEqual({ type: 'tick', name: 'edges padded', ...none })
    expect(readCheck('document torque sheet')).toMatchObject({ type: 'document' })
  })

  it('never loses a limit that is written with blanks around its dots', () => {
    expect(readCheck('reading pressure 3.1 .. 4.5 bar')).toMatchObject({
      what: 'limits with blanks',
    })
    expect(readCheck('reading pressure 3.1.. 4.5 bar')).toMatchObject({
      what: 'limits with blanks',
    })
    expect(readCheck('reading pressure 3.1 ..4.5 bar')).toMatchObject({
      what: 'limits with blanks',
    })
  })

  it('is refused with crossed limits, without a name, or of an unknown kind', () => {
    expect(readCheck('reading pressure 4.5..3.1 bar')).toMatchObject({ what: 'limits cross' })
    expect(readCheck('photo')).toMatchObject({ what: 'check without name' })
    expect(readCheck('reading 3..4 bar')).toMatchObject({ what: 'check without name' })
    expect(readCheck('foto each side')).toMatchObject({
      what: 'unknown',
      kind: 'check',
      name: 'foto',
    })
  })

  it('may end its name with a number, or have dots in it', () => {
    const odd = [
      { type: 'reading', name: 'bank 2', least: null, greatest: 4.5, unit: 'bar' },
      { type: 'reading', name: '3..4', least: null, greatest: null, unit: null },
      { type: 'reading', name: '2', least: null, greatest: null, unit: 'x..y' },
    ] as const
    for (const check of odd) expect(readCheck(writeCheck(check))).toEqual(check)
  })
})

describe('a point in a cell', () => {
  it('is a hold or a witness point, and who', () => {
    expect(readHold('hold: Ines Halloran')).toEqual({ point: 'hold', who: 'Ines Halloran' })
    expect(readHold('Witness point : owner')).toEqual({ point: 'witness', who: 'owner' })
  })

  it('says who', () => {
    expect(readHold('hold:')).toMatchObject({ what: 'not a hold' })
    expect(readHold('owner')).toMatchObject({ what: 'not a hold' })
  })
})
