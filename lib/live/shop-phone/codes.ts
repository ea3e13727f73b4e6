import type { CommandKey } from '../../record/ids.ts'

/** Codes on their way with a press, by its key. Here alone, and until it is sent: no queue and no disk has them. */
const codes = new Map<string, string>()

/** A hand signed the press of that key. */
export const putCode = (key: CommandKey | string, code: string): void => void codes.set(key, code)
/** Whether the press of that key was signed, and isn't sent. */
export const hasCode = (key: string): boolean => codes.has(key)
/** The code of that press, which is known no longer. */
export function takeCode(key: string): string | null {
  const code = codes.get(key) ?? null
  codes.delete(key)
  return code
}
