import type { Link } from '../../record/entities/work.ts'
import { escaped, plainText, trimmed } from './cell.ts'
import { readFigure, writeFigure } from './figures.ts'
import type { Fact } from './reading-fault.ts'

/** What a stage waits for, as a cell says it: a stage by number or name, and the lags in clock hours. */
export type AfterLine = Pick<Link, 'leastLagHours' | 'greatestLagHours'> & {
  readonly stage: { readonly number: number } | { readonly name: string }
}

const lag = /(?<!\\)([+<])\s*([\d.,]+(?:e[+-]?\d+)?)\s*h$/i

/** Reads one predecessor, still escaped: `Prime +24h <72h`, `12 +24h`. */
export function readAfter(raw: string): AfterLine | Fact {
  let rest = raw
  let least: number | undefined
  let greatest: number | undefined
  for (let found = lag.exec(rest); found !== null; found = lag.exec(rest)) {
    const text = found[2] ?? ''
    const hours = readFigure(text)
    if (hours === null || hours > 100_000) return { what: 'not hours', text }
    if (found[1] === '+') {
      if (least !== undefined) return { what: 'lag twice', name: raw }
      least = hours
    } else {
      if (greatest !== undefined) return { what: 'lag twice', name: raw }
      greatest = hours
    }
    rest = trimmed(rest.slice(0, found.index))
  }
  if (rest === '') return { what: 'empty' }
  if (greatest !== undefined && greatest < (least ?? 0)) return { what: 'lags cross', name: raw }
  return {
    stage: /^\d+$/.test(rest) ? { number: Number(rest) } : { name: plainText(rest) },
    leastLagHours: least ?? 0,
    greatestLagHours: greatest ?? null,
  }
}

/** A predecessor as `readAfter` reads it. */
export function writeAfter(after: AfterLine): string {
  const stage =
    'number' in after.stage ? String(after.stage.number) : escaped(after.stage.name, '|+<')
  const least = after.leastLagHours === 0 ? '' : ` +${writeFigure(after.leastLagHours)}h`
  const greatest =
    after.greatestLagHours === null ? '' : ` <${writeFigure(after.greatestLagHours)}h`
  return `${stage}${least}${greatest}`
}
