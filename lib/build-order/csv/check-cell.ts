import { type Check, CheckType } from '../../record/entities/work.ts'
import { beginsWithFigure } from '../check-limits.ts'
import { escaped, plainText, trimmed } from './cell.ts'
import { readFigure, writeFigure } from './figures.ts'
import type { Fact } from './reading-fault.ts'

/** A check as a cell says it: `reading oil pressure 3.1..4.5 bar`, `photo each side`. */
export type CheckLine = Pick<Check, 'type' | 'name' | 'unit' | 'least' | 'greatest'>

const limits = /(?:^|\s)([+-]?[\d.,]*\d(?:e[+-]?\d+)?)?\.\.([+-]?[\d.,]*\d(?:e[+-]?\d+)?)?(?=\s|$)/i
/** A number at the end of a name, apart by a blank: that of `bank 2`, or a limit that lost its dots. */
const endsWithFigure = /\S(?<!\\)\s+[+-]?[\d.,]*\d$/
const twoDots = /\.(?=\.)|(?<=\.)\./g

const noLimits = { unit: null, least: null, greatest: null } as const

function readReading(rest: string): CheckLine | Fact {
  const found = limits.exec(rest)
  if (found === null) return { type: 'reading', name: plainText(rest), ...noLimits }
  const name = trimmed(rest.slice(0, found.index))
  const unit = trimmed(rest.slice(found.index + found[0].length))
  const [least, greatest] = [found[1], found[2]].map((text) =>
    text === undefined ? null : readFigure(text),
  )
  const lost = { what: 'limits with blanks', text: rest } as const
  if (least === undefined || greatest === undefined) return lost
  if (found[1] !== undefined && least === null) return { what: 'not a number', text: found[1] }
  if (found[2] !== undefined && greatest === null) return { what: 'not a number', text: found[2] }
  if (greatest === null && beginsWithFigure(unit)) return lost
  if (least === null && endsWithFigure.test(name)) return lost
  if (least !== null && greatest !== null && least > greatest)
    return { what: 'limits cross', text: rest }
  return {
    type: 'reading',
    name: plainText(name),
    unit: unit === '' ? null : plainText(unit),
    least,
    greatest,
  }
}

/** Reads one check, still escaped: its kind, its name, and the limits and the unit of a reading. */
export function readCheck(raw: string): CheckLine | Fact {
  const [kind = ''] = raw.split(/\s/, 1)
  const type = CheckType.safeParse(kind.toLowerCase())
  if (!type.success) return { what: 'unknown', kind: 'check', name: plainText(kind), nearest: null }
  const rest = trimmed(raw.slice(kind.length))
  const check: CheckLine | Fact =
    type.data === 'reading'
      ? readReading(rest)
      : { type: type.data, name: plainText(rest), ...noLimits }
  if ('what' in check) return check
  if (check.name === '') return { what: 'check without name', text: raw }
  const longest = Math.max(check.name.length, check.unit?.length ?? 0)
  return longest > 200 ? { what: 'too long', letters: longest } : check
}

const safe = (text: string): string => escaped(text, '|').replace(twoDots, '\\.')

/** A check as `readCheck` reads it. */
export function writeCheck(check: CheckLine): string {
  const { type, unit, least, greatest } = check
  const open = type === 'reading' && least === null && (unit !== null || greatest !== null)
  // `bank 2 ..4.5` would look like a limit that lost its dots.
  const name = open
    ? safe(check.name).replace(/(?<!\\)\s(?=[+-]?[\d.,]*\d$)/, '\\$&')
    : safe(check.name)
  if (type !== 'reading' || (unit === null && least === null && greatest === null))
    return `${type} ${name}`
  const range = `${writeFigure(least)}..${writeFigure(greatest)}`
  return `${type} ${name} ${range}${unit === null ? '' : ` ${safe(unit)}`}`
}
