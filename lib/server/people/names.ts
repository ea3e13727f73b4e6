import type { People } from '../../command/wire.ts'
import type { PrismaClient } from '../generated/client.ts'
import { namesOf } from './accounts.ts'

/** A name is read again after this time, in ms: it may have been put right, or erased. */
const NAME_MS = 60_000

/** Names of persons, kept for a minute. */
export type Names = (persons: ReadonlySet<string>) => Promise<People>

/** Names of the accounts. */
export function openNames(prisma: PrismaClient): Names {
  const known = new Map<string, { readonly name: string; readonly untilMs: number }>()
  return async (persons) => {
    const now = Date.now()
    const wanted = [...persons].filter((id) => (known.get(id)?.untilMs ?? 0) < now)
    const fresh = await namesOf(prisma, new Set(wanted))
    for (const [id, name] of Object.entries(fresh)) known.set(id, { name, untilMs: now + NAME_MS })
    const found: { [person: string]: string } = {}
    for (const id of persons) {
      const name = known.get(id)?.name
      if (name !== undefined) found[id] = name
    }
    return found
  }
}
