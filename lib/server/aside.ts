import { randomUUID } from 'node:crypto'
import type { Late } from './for-pages.ts'

/** Longer than any page takes to be made, in ms. */
const STAYS_MS = 30_000

/** What the pages that are being made are made of. It is looked at by ticket, and goes by itself. */
export type Aside<T> = {
  /** Lays a thing aside that the phone fetches at `path`; null where there is none. */
  readonly late: (value: T | null, path: string) => Late | null
  readonly of: (ticket: string) => T | undefined
}

/** A place to lay things aside in. */
export function openAside<T>(): Aside<T> {
  const laid = new Map<string, T>()
  return {
    late(value, path) {
      if (value === null) return null
      const ticket = randomUUID()
      laid.set(ticket, value)
      setTimeout(() => laid.delete(ticket), STAYS_MS).unref()
      return { ticket, path }
    },
    of: (ticket) => laid.get(ticket),
  }
}
