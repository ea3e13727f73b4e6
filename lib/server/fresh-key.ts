import { randomBytes } from 'node:crypto'
import { CommandKey, idsFrom, type NewId } from '../record/ids.ts'

/** A UUID version 7 (RFC 9562) for a command that the server itself enters: 48 bits of milliseconds, then random ones. */
export function freshKey(): CommandKey {
  const bytes = randomBytes(16)
  bytes.writeUIntBE(Date.now(), 0, 6)
  bytes.writeUInt8(0x70 | (bytes.readUInt8(6) & 0x0f), 6)
  bytes.writeUInt8(0x80 | (bytes.readUInt8(8) & 0x3f), 8)
  const hex = bytes.toString('hex')
  const parts = [
    hex.slice(0, 8),
    hex.slice(8, 12),
    hex.slice(12, 16),
    hex.slice(16, 20),
    hex.slice(20),
  ]
  return CommandKey.parse(parts.join('-'))
}

/** One id of its own, outside any command. */
export const freshId: NewId = (prefix) => idsFrom(freshKey())(prefix)
