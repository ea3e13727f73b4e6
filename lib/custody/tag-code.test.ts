import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readScanned, readTagCode, spacedCode, tagCode, tagPath } from './tag-code.ts'

const YARD = 'https://yard.example'
const anId = fc
  .stringMatching(/^[0-9a-f]{12}7[0-9a-f]{3}[89ab][0-9a-f]{15}[0-9a-z]{4}$/)
  .map((stem) => `asm_${stem}`)

describe('tagCode', () => {
  const code = tagCode('asm_0195e0f2a1b27c3d8e4f5a6b7c8d9e0f0000')

  it('gives an assembly the same eight symbols on every phone, for good', () => {
    expect(code).toBe(tagCode('asm_0195e0f2a1b27c3d8e4f5a6b7c8d9e0f0000'))
    expect(code).toMatch(/^[0-9A-HJKMNP-TV-Z]{8}$/)
    // Tags hang on cars: another code for the same id would orphan them.
    expect(code).toBe('R2RJT39D')
  })

  it('is read back as it was painted, however it is typed', () => {
    fc.assert(
      fc.property(anId, (id) => {
        const made = tagCode(id)
        const asTyped = spacedCode(made).toLowerCase().replaceAll('0', 'o').replaceAll('1', 'l')
        expect(readTagCode(asTyped)).toEqual({ ok: true, code: made })
      }),
    )
  })

  it('notices one wrong symbol, and two that changed places', () => {
    fc.assert(
      fc.property(anId, fc.nat(7), fc.nat(30), (id, place, other) => {
        const made = tagCode(id)
        const symbols = '0123456789ABCDEFGHJKMNPQRSTVWXYZ'.replace(made.charAt(place), '')
        const wrong = made.slice(0, place) + symbols.charAt(other) + made.slice(place + 1)
        expect(readTagCode(wrong)).toEqual({ ok: false, why: 'misread' })
        const at = place % 6
        const [a, b] = [made.charAt(at), made.charAt(at + 1)]
        if (a !== b) {
          const swapped = made.slice(0, at) + b + a + made.slice(at + 2)
          expect(readTagCode(swapped)).toEqual({ ok: false, why: 'misread' })
        }
      }),
    )
  })

  it('tells what is wrong with what was typed', () => {
    expect(readTagCode('  ')).toEqual({ ok: false, why: 'empty' })
    expect(readTagCode('7KQM')).toEqual({ ok: false, why: 'length' })
    expect(readTagCode('7KQM 3XR?')).toEqual({ ok: false, why: 'symbol' })
  })
})

describe('readScanned', () => {
  const code = tagCode('asm_0195e0f2a1b27c3d8e4f5a6b7c8d9e0f0000')

  it('knows a tag of this yard, by its address or by the bare code', () => {
    expect(readScanned(YARD + tagPath(code), YARD)).toEqual({ is: 'tag', code })
    expect(readScanned(`${YARD}/t/${code.toLowerCase()}/`, YARD)).toEqual({ is: 'tag', code })
    expect(readScanned(spacedCode(code), YARD)).toEqual({ is: 'tag', code })
  })

  it('says of another yard’s tag which yard it is', () => {
    expect(readScanned(`https://elsewhere.example/t/${code}`, YARD)).toEqual({
      is: 'other yard',
      host: 'elsewhere.example',
    })
  })

  it('takes other pages of this yard for pages, and the rest for none of ours', () => {
    expect(readScanned(`${YARD}/receipt/abc?x=1`, YARD)).toEqual({
      is: 'page',
      path: '/receipt/abc?x=1',
    })
    expect(readScanned(`${YARD}/t/nonsense`, YARD)).toEqual({ is: 'misread' })
    expect(readScanned('https://elsewhere.example/menu', YARD)).toEqual({ is: 'none of ours' })
    expect(readScanned('BATCH 4411', YARD)).toEqual({ is: 'none of ours' })
    expect(readScanned('javascript:alert(1)', YARD)).toEqual({ is: 'none of ours' })
  })
})
