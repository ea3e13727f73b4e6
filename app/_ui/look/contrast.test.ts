import { describe, expect, it } from 'vitest'
import { pairs } from './contrast-pairs.ts'
import { type Both, colours, contrast, rulesOf, sheets } from './stylesheet.ts'

const tokens = colours()
const colour = (token: string): Both => {
  const found = tokens.get(token)
  if (found === undefined) throw new Error(`There is no colour --${token}.`)
  return found
}
/** What a declaration paints with, where that is one token. */
const token = (value: string | undefined): string | undefined =>
  /^var\(--([\w-]+)\)$/.exec(value ?? '')?.[1]
const painted = sheets
  .filter((sheet) => sheet !== 'tokens.css' && sheet !== 'print.css' && sheet !== 'forced.css')
  .flatMap(rulesOf)

describe('the inks of the look', () => {
  it('measures contrast as WCAG 2.2 does', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5)
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2)
    expect(contrast('#fff', '#fff')).toBe(1)
  })

  it('can be read on all that they are laid on, by day and by night', () => {
    const faint = pairs.flatMap(({ ink, on, least }) =>
      (['card', 'booth'] as const).flatMap((theme) => {
        const is = contrast(colour(ink)[theme], colour(on)[theme])
        return is >= least ? [] : [`${theme}: ${ink} on ${on} ${is.toFixed(2)}, least ${least}`]
      }),
    )
    expect(faint).toEqual([])
  })

  it('are laid on nothing that is not measured', () => {
    const laid = painted.flatMap(({ file, selector, sets }) => {
      const ink = token(sets.get('color'))
      const on = token(sets.get('background') ?? sets.get('background-color'))
      return ink === undefined || on === undefined
        ? []
        : [{ ink, on, where: `${file} ${selector}` }]
    })
    expect(laid.length).toBeGreaterThan(10)
    const unknown = laid.filter(
      (one) => !pairs.some(({ ink, on }) => ink === one.ink && on === one.on),
    )
    expect(unknown).toEqual([])
  })

  it('are each measured on something, wherever they paint words', () => {
    const used = new Set(painted.flatMap(({ sets }) => token(sets.get('color')) ?? []))
    expect(used.size).toBeGreaterThan(5)
    expect([...used].filter((ink) => !pairs.some((pair) => pair.ink === ink))).toEqual([])
  })

  it('come from the tokens alone', () => {
    const own = painted.flatMap(({ file, selector, sets }) =>
      [...sets]
        // A mask knows only there and not there; #0000 is nothing at all.
        .filter(([name]) => !/mask|^--m$/.test(name))
        .filter(([, value]) => /#(?!0000\b)[0-9a-f]{3,8}\b|\brgb|\bhsl|\boklch/i.test(value))
        .map(([name]) => `${file} ${selector} ${name}`),
    )
    expect(own).toEqual([])
  })

  it('are all the device’s own where it forces its colours', () => {
    const forced = new Set(rulesOf('forced.css').flatMap(({ sets }) => [...sets.keys()]))
    expect([...tokens.keys()].filter((name) => !forced.has(`--${name}`))).toEqual([])
  })
})

describe('the order of the source', () => {
  it('is the phone’s: nothing is moved by `order`', () => {
    expect(painted.filter(({ sets }) => sets.has('order'))).toEqual([])
  })
})
