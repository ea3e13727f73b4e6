import { describe, expect, it } from 'vitest'
import { readSheet, writeSheet } from './sheet.ts'

const cells = (text: string) => {
  const sheet = readSheet(text)
  return sheet.ok ? sheet.rows.map((row) => row.cells) : sheet
}

describe('separated values (RFC 4180 §2)', () => {
  it('end a line with CR LF, LF or CR, the last one or not', () => {
    const rows = [
      ['aaa', 'bbb'],
      ['ccc', 'ddd'],
    ]
    expect(cells('aaa,bbb\r\nccc,ddd\r\n')).toEqual(rows)
    expect(cells('aaa,bbb\nccc,ddd')).toEqual(rows)
    expect(cells('aaa,bbb\rccc,ddd\r')).toEqual(rows)
  })

  it('keep separators, line breaks and doubled quotes inside quotes', () => {
    expect(cells('"b\r\nbb","a,a","a""b"\r\n')).toEqual([['b\r\nbb', 'a,a', 'a"b']])
  })

  it('keep the blanks of a cell', () => {
    expect(cells(' a ,b\r\n')).toEqual([[' a ', 'b']])
  })

  it('may have a quote in the middle of a cell: inches', () => {
    expect(cells('stage,shop\n5" disc,Hob Lane\n')).toEqual([
      ['stage', 'shop'],
      ['5" disc', 'Hob Lane'],
    ])
  })

  it('with a quote that is never closed say in which line it opens', () => {
    expect(readSheet('stage,shop\nPrime,Hob Lane\n"Paint,Hob Lane\nTrim,Hob Lane\n')).toEqual({
      ok: false,
      line: 3,
    })
  })
})

describe('spreadsheets', () => {
  it('separate by semicolons where the comma is the decimal sign', () => {
    expect(cells('Stage;Shop;Hours, likely\nPrime;Hob Lane;1,5\n')).toEqual([
      ['Stage', 'Shop', 'Hours, likely'],
      ['Prime', 'Hob Lane', '1,5'],
    ])
  })

  it('separate by tabs when copied', () => {
    expect(cells('stage\tshop\nPrime\tHob Lane, Kent')).toEqual([
      ['stage', 'shop'],
      ['Prime', 'Hob Lane, Kent'],
    ])
  })

  it('say the separator in a first line of their own, which is no row', () => {
    expect(readSheet('sep=;\r\nstage;shop\r\n')).toEqual({
      ok: true,
      delimiter: ';',
      rows: [{ line: 1, cells: ['stage', 'shop'] }],
    })
  })

  it('leave blank lines, which count as rows', () => {
    const sheet = readSheet('\nstage,shop\n\nPrime,Hob Lane\n')
    expect(sheet.ok && sheet.rows.map((row) => row.cells.length)).toEqual([1, 2, 1, 2])
  })

  it('never take what is exported for a formula', () => {
    expect(writeSheet([['=HYPERLINK("x")', '+1', '-1', '@a', 'a=b']])).toBe(
      '\uFEFF"\\=HYPERLINK(""x"")",\\+1,\\-1,\\@a,a=b\r\n',
    )
  })
})
