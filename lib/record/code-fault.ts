/** How many digits a hand's own code has. */
export const CODE_LEAST = 4
export const CODE_MOST = 8

/** Why a code won't do. */
export type CodeFault = 'digits' | 'same' | 'run' | 'pattern'

const RUNS = ['01234567890123456789', '98765432109876543210']

/** Why a code won't do: too short, too long, or one of those that everybody tries first; null where it will do. */
export function codeFault(code: string): CodeFault | null {
  if (!new RegExp(`^\\d{${CODE_LEAST},${CODE_MOST}}$`).test(code)) return 'digits'
  if (/^(\d)\1+$/.test(code)) return 'same'
  if (RUNS.some((run) => run.includes(code))) return 'run'
  return /^(\d\d|\d\d\d|\d\d\d\d)\1+$/.test(code) ? 'pattern' : null
}
