import { describe, expect, it } from 'vitest'
import { decodeText } from './decode-text.ts'

const bytes = (...values: number[]) => new Uint8Array(values)

describe('the bytes of a spreadsheet', () => {
  it('are UTF-8, with or without a byte order mark', () => {
    expect(decodeText(new TextEncoder().encode('Kühler µm'))).toBe('Kühler µm')
    expect(decodeText(bytes(0xef, 0xbb, 0xbf, 0x61))).toBe('a')
  })

  it('are Windows-1252 where they are not UTF-8 (WHATWG Encoding, index windows-1252)', () => {
    // 0x80 €, 0x92 ’, 0x96 –, 0xB5 µ, 0xFC ü; 0x81 stays the control character U+0081.
    expect(decodeText(bytes(0x80, 0x92, 0x96, 0xb5, 0xfc, 0x81))).toBe('€’–µü\u0081')
  })

  it('are UTF-16 where the mark says so, as “Unicode text” is saved', () => {
    expect(decodeText(bytes(0xff, 0xfe, 0xfc, 0x00, 0x09, 0x00))).toBe('ü\t')
    expect(decodeText(bytes(0xfe, 0xff, 0x00, 0xfc))).toBe('ü')
  })
})
