import { sha256Hex } from '../record/sha256.ts'

/** Figures and letters that aren't mistaken for each other when painted on a tag: no I, L, O or U (Crockford's base 32). */
const SYMBOLS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ'
/** Symbols without the last one, which checks them. 35 bits: some millions of assemblies before two of one person's meet. */
const LENGTH = 7
const BITS = 5
/** The field of 32 elements is made by x⁵ + x² + 1. */
const FIELD = 0b100101

/** In that field the sum of the symbols, each weighed by its place: one wrong symbol or two that changed places don't keep it. */
const checkOf = (symbols: readonly number[]): number =>
  symbols.reduce((sum, symbol) => {
    const shifted = (sum ^ symbol) << 1
    return shifted > 31 ? shifted ^ FIELD : shifted
  }, 0)

const write = (symbols: readonly number[]): string =>
  symbols.map((symbol) => SYMBOLS.charAt(symbol)).join('')

/**
 * The short code on an assembly's tag: seven symbols and one that checks them, such as `7KQM3XRD`. It derives from the assembly's id,
 * so that it never changes and every phone makes the same one.
 */
export function tagCode(assembly: string): string {
  // Nine hexadecimal figures are 36 bits.
  let rest = Number.parseInt(sha256Hex(assembly).slice(0, 9), 16)
  const symbols = Array.from({ length: LENGTH }, () => {
    const symbol = rest % 2 ** BITS
    rest = Math.floor(rest / 2 ** BITS)
    return symbol
  })
  return write([...symbols, checkOf(symbols)])
}

/** As it is read out and painted: `7KQM 3XRD`. */
export const spacedCode = (code: string): string => `${code.slice(0, 4)} ${code.slice(4)}`

/** A code as it was typed, or why it is none. */
export type ReadCode =
  | { readonly ok: true; readonly code: string }
  | { readonly ok: false; readonly why: 'empty' | 'length' | 'symbol' | 'misread' }

/** Reads a typed code: small letters, spaces and strokes are fine, and O stands for 0, I and L for 1. */
export function readTagCode(typed: string): ReadCode {
  const code = typed
    .toUpperCase()
    .replaceAll(/[\s\-–—.]/g, '')
    .replaceAll('O', '0')
    .replaceAll(/[IL]/g, '1')
  if (code === '') return { ok: false, why: 'empty' }
  const symbols = [...code].map((symbol) => SYMBOLS.indexOf(symbol))
  if (symbols.includes(-1)) return { ok: false, why: 'symbol' }
  if (symbols.length !== LENGTH + 1) return { ok: false, why: 'length' }
  return checkOf(symbols.slice(0, LENGTH)) === symbols[LENGTH]
    ? { ok: true, code }
    : { ok: false, why: 'misread' }
}

/** The page that a tag's QR code opens, also by a phone's own camera. Short, so that its squares stay big. */
export const tagPath = (code: string): string => `/t/${code}`

/** What a scanned QR code holds, for a yard at `origin`. */
export type ScannedText =
  | { readonly is: 'tag'; readonly code: string }
  | { readonly is: 'misread' }
  /** Another page of this yard, such as a receipt's link. */
  | { readonly is: 'page'; readonly path: string }
  /** A tag of an installation at another address. */
  | { readonly is: 'other yard'; readonly host: string }
  | { readonly is: 'none of ours' }

/** Tells what a scanned text is. A bare code counts, since people print their own. */
export function readScanned(text: string, origin: string): ScannedText {
  const bare = readTagCode(text)
  if (bare.ok) return { is: 'tag', code: bare.code }
  if (!URL.canParse(text)) return { is: 'none of ours' }
  const { origin: from, host, pathname, search } = new URL(text)
  const typed = /^\/t\/([^/]+)\/?$/i.exec(pathname)?.[1]
  if (typed !== undefined) {
    if (from !== origin) return { is: 'other yard', host }
    const read = readTagCode(typed)
    return read.ok ? { is: 'tag', code: read.code } : { is: 'misread' }
  }
  return from === origin ? { is: 'page', path: pathname + search } : { is: 'none of ours' }
}
