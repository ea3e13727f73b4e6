import type { Hold } from '../../record/entities/work.ts'
import { escaped, plainText } from './cell.ts'
import type { Fact } from './reading-fault.ts'

/** A hold or witness point as a cell says it: `hold: who`. */
export interface HoldLine {
  readonly point: Hold['point']
  readonly who: string
}

/** Reads one point, still escaped. */
export function readHold(raw: string): HoldLine | Fact {
  const found = /^(hold|witness)(?:\s+point)?\s*:(.*)$/is.exec(raw)
  const who = plainText(found?.[2] ?? '')
  if (found === null || who === '') return { what: 'not a hold', text: raw }
  return { point: found[1]?.toLowerCase() === 'witness' ? 'witness' : 'hold', who }
}

/** A point as `readHold` reads it. */
export const writeHold = ({ point, who }: HoldLine): string => `${point}: ${escaped(who, '|')}`
