import type { Column } from './columns.ts'

/** A stage of the file, by its line and its name. */
export interface Named {
  readonly line: number
  readonly name: string
}

/** What can be wrong in a file, as facts; lib/words/csv.ts makes the sentences. */
export type Fact =
  /** A quote that is opened and never closed. */
  | { readonly what: 'quote' }
  | { readonly what: 'no headings' }
  | { readonly what: 'too many lines'; readonly lines: number; readonly most: number }
  | { readonly what: 'column missing' | 'column twice'; readonly name: Column }
  /** More cells than headings: a decimal comma without quotes, or a separator too many. */
  | { readonly what: 'too many cells'; readonly text: string }
  | { readonly what: 'empty' }
  | { readonly what: 'too long'; readonly letters: number }
  | { readonly what: 'not a number' | 'not hours'; readonly text: string }
  | { readonly what: 'hours go down' }
  /** No such shop, stage, or party, role or person, or kind of check. `nearest`: what was probably meant. */
  | {
      readonly what: 'unknown'
      readonly kind: 'shop' | 'stage' | 'who' | 'check'
      readonly name: string
      readonly nearest: string | null
    }
  /** Several have that name; `lines` says where, as far as they are in the file. */
  | {
      readonly what: 'ambiguous'
      readonly kind: 'shop' | 'assembly' | 'stage' | 'who'
      readonly name: string
      readonly lines: readonly number[]
    }
  | { readonly what: 'no stage on line'; readonly number: number }
  | { readonly what: 'itself' }
  | { readonly what: 'twice'; readonly name: string }
  | { readonly what: 'lag twice' | 'lags cross'; readonly name: string }
  | {
      readonly what: 'check without name' | 'limits with blanks' | 'limits cross'
      readonly text: string
    }
  | { readonly what: 'not a hold'; readonly text: string }
  /** Each waits for the one before it, the first for the last. */
  | { readonly what: 'circle'; readonly stages: readonly Named[] }
  | { readonly what: 'exists'; readonly name: string; readonly number: number }

/** A fault, and where: rows as a spreadsheet counts them from 1, the column by its heading; null where it is the whole file or row. */
export type Fault = Fact & { readonly line: number | null; readonly column: Column | null }
