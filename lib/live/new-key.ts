import { CommandKey } from '../record/ids.ts'

/** A UUID version 7 (RFC 9562): 48 bits of milliseconds, then 74 random bits. Made where the press happens. */
export function newKey(atMs: number = Date.now()): CommandKey {
  const bytes = crypto.getRandomValues(new Uint8Array(16))
  let rest = Math.floor(atMs)
  for (let at = 5; at >= 0; at--) {
    bytes[at] = rest % 256
    rest = Math.floor(rest / 256)
  }
  bytes[6] = 0x70 | ((bytes[6] ?? 0) & 0x0f)
  bytes[8] = 0x80 | ((bytes[8] ?? 0) & 0x3f)
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')
  return CommandKey.parse(
    [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join(
      '-',
    ),
  )
}
