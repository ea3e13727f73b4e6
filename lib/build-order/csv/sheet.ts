import { CsvError, parse } from 'csv-parse/browser/esm/sync'
import { columnOf } from './columns.ts'

/** A row as a spreadsheet counts it: the first of the file is 1, blank ones count too. */
export interface Row {
  readonly line: number
  readonly cells: readonly string[]
}
/** A file as rows of cells, or where it can’t be read. */
export type Sheet =
  | { readonly ok: true; readonly delimiter: string; readonly rows: readonly Row[] }
  /** A quote is opened in that line and never closed. */
  | { readonly ok: false; readonly line: number }

const delimiters = [',', ';', '\t'] as const

/** RFC 4180, and what spreadsheets do beyond it: other separators, lone line feeds, `5" disc` without quotes around it. */
const rowsBy = (delimiter: string, text: string, to = -1): string[][] =>
  parse(text, {
    delimiter,
    record_delimiter: ['\r\n', '\n', '\r'],
    relax_column_count: true,
    relax_quotes: true,
    to,
  })

/** Whether a row has nothing in it. */
export const isBlankRow = (cells: readonly string[]): boolean =>
  cells.every((cell) => cell.trim() === '')

/** How many headings a reader would know if this were the separator. */
function headingsKnown(delimiter: string, text: string): number {
  try {
    // Headings stand in the first rows; some thousand characters hold them.
    const rows = rowsBy(delimiter, text.slice(0, 16_384), 10)
    const headings = rows.find((row) => !isBlankRow(row)) ?? []
    return headings.filter((heading) => columnOf(heading) !== undefined).length
  } catch {
    return 0
  }
}

function delimiterOf(text: string): string {
  const scores = delimiters.map((delimiter) => headingsKnown(delimiter, text))
  const best = Math.max(...scores)
  return delimiters[scores.indexOf(best)] ?? ','
}

/** The rows of a text with separated values, whichever separator it has; a first line `sep=;` says so itself. */
export function readSheet(text: string): Sheet {
  const bare = text.replace(/^\uFEFF/, '')
  const said = /^"?sep=(.)"?(?:\r\n|\n|\r)/i.exec(bare)
  const body = said === null ? bare : bare.slice(said[0].length)
  const delimiter = said?.[1] ?? delimiterOf(body)
  try {
    const rows = rowsBy(delimiter, body)
    return { ok: true, delimiter, rows: rows.map((cells, i) => ({ line: i + 1, cells })) }
  } catch (error) {
    if (!(error instanceof CsvError)) throw error
    // The row in which the quote opens: as many were whole before it. The parser itself tells the end of the text.
    const whole: unknown = error.records
    return { ok: false, line: typeof whole === 'number' ? whole + 1 : 1 }
  }
}

const quoted = (cell: string): string =>
  /[",;\t\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell

/** Characters at which a spreadsheet takes a cell for a formula. */
const formula = /^[=+\-@＝＋－＠]/

/** Rows as RFC 4180 writes them, with a byte order mark so that spreadsheets take them for UTF-8. */
export const writeSheet = (rows: readonly (readonly string[])[]): string =>
  `\uFEFF${rows
    .map((cells) => cells.map((cell) => quoted(formula.test(cell) ? `\\${cell}` : cell)).join(','))
    .join('\r\n')}\r\n`
