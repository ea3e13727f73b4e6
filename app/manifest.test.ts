import { existsSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import manifest from './manifest.ts'

const ROOT = fileURLToPath(new URL('../', import.meta.url))

describe('what a phone is told of Fettleyard', () => {
  const { icons = [], shortcuts = [], background_color: ground, ...rest } = manifest()

  it('paints its first moment in the floor’s own colour, and draws the icon in colours of the look', () => {
    const tokens = readFileSync(`${ROOT}app/_ui/look/tokens.css`, 'utf8')
    expect(tokens).toContain(`--floor: light-dark(${ground},`)
    expect(rest.theme_color).toBe(ground)
    const drawing = readFileSync(`${ROOT}public/icons/card.svg`, 'utf8')
    const colours = drawing.match(/#[0-9a-f]{6}/g) ?? []
    expect(colours.length).toBeGreaterThan(4)
    expect(colours.filter((colour) => !tokens.includes(colour))).toEqual([])
  })

  it('names pictures that are there, each of the size that it says', () => {
    expect(icons.map(({ purpose }) => purpose)).toContain('maskable')
    const shown = [...icons, ...shortcuts.flatMap((shortcut) => shortcut.icons ?? [])]
    for (const { src, sizes } of shown) {
      const file = `${ROOT}public${src}`
      expect(existsSync(file), src).toBe(true)
      // The picture's width and height stand at the head of a PNG.
      const head = readFileSync(file).subarray(16, 24)
      expect(`${head.readUInt32BE(0)}x${head.readUInt32BE(4)}`, src).toBe(sizes)
    }
  })

  it('stays within its own addresses', () => {
    const addresses = [rest.start_url, rest.scope, ...shortcuts.map(({ url }) => url)]
    expect(addresses.filter((address) => !address?.startsWith('/'))).toEqual([])
  })
})
