import { CheckType } from '../../record/entities/work.ts'
import { STAGES_AT_MOST } from '../build-order-import.ts'
import { hoursInOrder } from '../stage-fields.ts'
import { type AfterLine, readAfter } from './after-cell.ts'
import { plainText, things } from './cell.ts'
import { type CheckLine, readCheck } from './check-cell.ts'
import { type Column, columnOf } from './columns.ts'
import { readFigure } from './figures.ts'
import { type HoldLine, readHold } from './hold-cell.ts'
import { nearestAmong } from './nearest.ts'
import type { Fact, Fault } from './reading-fault.ts'
import { isBlankRow, type Row, readSheet } from './sheet.ts'

/** One line of a build order as it is written, before anything is looked up. */
export interface ReadLine {
  readonly line: number
  /** Counted from the first line under the headings; blank lines count. */
  readonly number: number
  readonly name: string
  readonly shop: string
  readonly assemblies: readonly string[]
  readonly hoursLeast: number | null
  readonly hoursLikely: number | null
  readonly hoursMost: number | null
  readonly after: readonly AfterLine[]
  readonly checks: readonly CheckLine[]
  readonly holds: readonly HoldLine[]
}

/** The lines of a file, and what is wrong with how they are written. */
export interface ReadLines {
  readonly lines: readonly ReadLine[]
  readonly faults: readonly Fault[]
  /** Headings that mean nothing here. */
  readonly ignored: readonly string[]
}

const nearestCheck = nearestAmong(CheckType.options)

/** Where each column stands, and what is wrong with the headings. */
function readHeadings(row: Row) {
  const at = new Map<Column, number>()
  const ignored: string[] = []
  const faults: Fault[] = []
  row.cells.forEach((heading, i) => {
    const column = columnOf(heading)
    if (column === undefined) {
      if (heading.trim() !== '') ignored.push(heading.trim())
    } else if (at.has(column))
      faults.push({ what: 'column twice', name: column, line: row.line, column })
    else at.set(column, i)
  })
  if (at.size === 0) faults.push({ what: 'no headings', line: row.line, column: null })
  else
    for (const name of ['stage', 'shop'] as const) {
      if (!at.has(name)) faults.push({ what: 'column missing', name, line: row.line, column: null })
    }
  return { at, ignored, faults }
}

function readHours(cell: string): number | null | Fact {
  const text = plainText(cell).replace(/\s*h(?:ours)?$/i, '')
  if (text === '') return null
  const hours = readFigure(text)
  if (hours === null) return { what: 'not a number', text }
  return hours < 0 || hours > 100_000 ? { what: 'not hours', text } : hours
}

/** Reads one line; `note` is told everything that is wrong with it. */
function readLine(
  row: Row,
  number: number,
  cell: (column: Column) => string,
  note: (column: Column, fact: Fact) => void,
): ReadLine {
  const isFine = <T extends object>(column: Column, read: T | Fact): read is T => {
    if (!('what' in read)) return true
    const unknownCheck = read.what === 'unknown' && read.kind === 'check'
    note(column, unknownCheck ? { ...read, nearest: nearestCheck(read.name) } : read)
    return false
  }
  const name = (column: Column, text: string): string => {
    if (text.length > 200) note(column, { what: 'too long', letters: text.length })
    return text
  }
  const needed = (column: Column): string => {
    const text = name(column, plainText(cell(column)))
    if (text === '') note(column, { what: 'empty' })
    return text
  }
  const hours = (column: Column): number | null => {
    const read = readHours(cell(column))
    if (typeof read === 'number' || read === null) return read
    note(column, read)
    return null
  }
  const [hoursLeast, hoursLikely, hoursMost] = [
    hours('hours least'),
    hours('hours likely'),
    hours('hours most'),
  ]
  if (!hoursInOrder(hoursLeast, hoursLikely, hoursMost))
    note('hours likely', { what: 'hours go down' })
  const assemblies = things(cell('assembly')).map((one) => name('assembly', plainText(one)))
  const checks = things(cell('checks'))
    .map(readCheck)
    .filter((read) => isFine<CheckLine>('checks', read))
  const met = new Set<string>()
  for (const check of checks) {
    const key = JSON.stringify([check.type, check.name])
    if (met.has(key)) note('checks', { what: 'twice', name: check.name })
    met.add(key)
  }
  return {
    line: row.line,
    number,
    name: needed('stage'),
    shop: needed('shop'),
    assemblies,
    hoursLeast,
    hoursLikely,
    hoursMost,
    after: things(cell('after'))
      .map(readAfter)
      .filter((read) => isFine<AfterLine>('after', read)),
    checks,
    holds: things(cell('hold'))
      .map(readHold)
      .filter((read) => isFine<HoldLine>('hold', read)),
  }
}

/** Reads a file line by line, with everything that is wrong with how it is written. */
export function readLines(text: string): ReadLines {
  const sheet = readSheet(text)
  if (!sheet.ok)
    return { lines: [], faults: [{ what: 'quote', line: sheet.line, column: null }], ignored: [] }
  const [headings, ...body] = sheet.rows.filter((row) => !isBlankRow(row.cells))
  if (headings === undefined)
    return { lines: [], faults: [{ what: 'no headings', line: 1, column: null }], ignored: [] }
  const { at, ignored, faults } = readHeadings(headings)
  if (body.length > STAGES_AT_MOST) {
    const many = { what: 'too many lines', lines: body.length, most: STAGES_AT_MOST } as const
    faults.push({ ...many, line: null, column: null })
  }
  if (faults.length > 0) return { lines: [], faults, ignored }
  const lines = body.map((row) => {
    const note = (column: Column | null, fact: Fact) =>
      faults.push({ ...fact, line: row.line, column })
    const beyond = row.cells.slice(headings.cells.length).filter((cell) => cell.trim() !== '')
    if (beyond.length > 0) note(null, { what: 'too many cells', text: beyond.join(' ') })
    const cell = (column: Column) => row.cells[at.get(column) ?? -1] ?? ''
    return readLine(row, row.line - headings.line, cell, note)
  })
  return { lines, faults, ignored }
}
