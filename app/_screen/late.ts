'use client'
import { use } from 'react'
import type { ProjectView, ShopView } from '@/lib/command/wire.ts'
import type { DaySheetSource } from '@/lib/command/wire-access.ts'
import type { Late } from '@/lib/server/for-pages.ts'
import { afterPaint } from './after-paint.ts'

/** What stands on a page and isn't in it: the server has it at hand, the phone fetches it once the page is painted. */
interface Arriving<T> {
  /** Begins to fetch it; what calls this needs not wait. */
  readonly begin: (late: Late) => void
  /** The thing itself; suspends until it is here. */
  readonly use: (late: Late) => T
}

const onServer = typeof window === 'undefined'

function arriving<T>(
  aside: (ticket: string) => T | undefined,
  read: (answer: Response) => Promise<T>,
): Arriving<T> {
  const coming = new Map<string, Promise<T>>()
  const fetched = ({ ticket, path }: Late): Promise<T> => {
    const before = coming.get(ticket)
    if (before !== undefined) return before
    const now = afterPaint(() => ask(path, read))
    coming.set(ticket, now)
    // Who uses it is told; nobody may ever use it.
    now.catch(() => undefined)
    return now
  }
  return {
    begin(late) {
      if (!onServer) void fetched(late)
    },
    use(late) {
      if (!onServer) return use(fetched(late))
      const there = aside(late.ticket)
      if (there === undefined) throw new Error(`Nothing lies aside for the page of ${late.path}.`)
      return there
    },
  }
}

/** @throws where there is no answer, or the server is not well: it is asked again */
async function ask<T>(path: string, read: (answer: Response) => Promise<T>): Promise<T> {
  const answer = await fetch(path, { cache: 'no-store' })
  if (answer.ok) return read(answer)
  if (answer.status >= 500) throw new Error(`${path} answered ${answer.status}.`)
  // Signed out or let go since the page was made: the page itself says so.
  location.reload()
  return new Promise(() => undefined)
}

/** The project of a page. */
export const lateProject = arriving(
  (ticket) => globalThis.fettleyard?.aside.project(ticket),
  async (answer): Promise<ProjectView> => answer.json(),
)

/** The shop book of a page. */
export const lateShop = arriving(
  (ticket) => globalThis.fettleyard?.aside.shop(ticket),
  async (answer): Promise<ShopView> => answer.json(),
)

/** The projects of a day sheet. */
export const lateDaySheet = arriving(
  (ticket) => globalThis.fettleyard?.aside.daySheet(ticket),
  async (answer): Promise<DaySheetSource> => answer.json(),
)
