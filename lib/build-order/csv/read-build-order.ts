import { distance } from 'fastest-levenshtein'
import { leadOf } from '../../record/actor.ts'
import type { ProjectRecord } from '../../record/project-record.ts'
import { circlesAmong } from '../circles.ts'
import { columns } from './columns.ts'
import { importOf } from './import-of.ts'
import type { Preview } from './preview.ts'
import { type ReadLine, readLines } from './read-lines.ts'
import type { Fault, Named } from './reading-fault.ts'
import { type Resolved, resolveLines } from './resolve-lines.ts'
import type { NamedPerson } from './who.ts'

/** What a build order is read against. */
export interface ReadingContext {
  readonly record: ProjectRecord
  /** Persons who act for the parties, by name, as far as the reader may know them. */
  readonly people: readonly NamedPerson[]
  /** What the person accepted after an earlier preview. */
  readonly accept?: {
    /** Unknown shops that become new parties. */
    readonly shops?: readonly string[]
    /** Stages whose name is in the record already come all the same. */
    readonly existing?: boolean
  }
}

const named = ({ line, name }: ReadLine): Named => ({ line, name })

function circleFaults(lines: readonly ReadLine[], resolved: readonly Resolved[]): Fault[] {
  const byLine = new Map(lines.map((line) => [line.line, line]))
  const links = resolved.flatMap((line) =>
    line.after.flatMap(({ from }) =>
      typeof from === 'number' ? [{ from, to: line.read.line }] : [],
    ),
  )
  return circlesAmong(links).map((circle): Fault => {
    // Told once, on its first line; the others stand behind that one.
    const line = circle.reduce((first, other) => Math.min(first, other))
    const start = circle.indexOf(line)
    const inOrder = [...circle.slice(start), ...circle.slice(0, start)]
    const stages = inOrder.flatMap((one) => byLine.get(one) ?? []).map(named)
    return { what: 'circle', stages, line, column: 'after' }
  })
}

/** Lines with a fault, and behind each all that wait for it. */
function leftOutOf(resolved: readonly Resolved[], faults: readonly Fault[]): Preview['leftOut'] {
  const faulty = new Set(faults.map((fault) => fault.line))
  const followers = new Map<number, Resolved[]>()
  for (const line of resolved) {
    for (const { from } of line.after) {
      if (typeof from !== 'number') continue
      const known = followers.get(from)
      if (known === undefined) followers.set(from, [line])
      else known.push(line)
    }
  }
  const behind = new Map<number, number | null>()
  const queue = resolved.map((line) => line.read.line).filter((line) => faulty.has(line))
  for (const line of queue) behind.set(line, null)
  for (const line of queue) {
    for (const follower of followers.get(line) ?? []) {
      if (behind.has(follower.read.line)) continue
      behind.set(follower.read.line, line)
      queue.push(follower.read.line)
    }
  }
  return resolved.flatMap(({ read }) => {
    const because = behind.get(read.line)
    return because === undefined ? [] : [{ ...named(read), behind: because }]
  })
}

/**
 * Reads a build order as a spreadsheet gives it (see `decodeText` for the bytes) and says what would be imported and all
 * that is wrong, by line and column. Changes nothing. `measure` is how different two names are, in letters.
 */
export function readBuildOrder(
  text: string,
  context: ReadingContext,
  measure: (a: string, b: string) => number = distance,
): Preview {
  const { record, people, accept } = context
  const { lines, faults: written, ignored } = readLines(text)
  const {
    resolved,
    faults: lookedUp,
    shops,
    assemblies,
  } = resolveLines(
    lines,
    record,
    people,
    { shops: accept?.shops ?? [], existing: accept?.existing === true },
    measure,
  )
  const order = (fault: Fault) => (fault.column === null ? -1 : columns.indexOf(fault.column))
  const faults = [...written, ...lookedUp, ...circleFaults(lines, resolved)].sort(
    (a, b) => (a.line ?? 0) - (b.line ?? 0) || order(a) - order(b),
  )
  const leftOut = leftOutOf(resolved, faults)
  const gone = new Set(leftOut.map((one) => one.line))
  const kept = resolved.filter(({ read }) => !gone.has(read.line))
  const used = new Set(kept.flatMap((line) => line.assemblies))
  const lead = leadOf(record)
  const made = assemblies.filter(({ key }) => used.has(key))
  const input =
    lead === undefined ? null : importOf(kept, shops, made, lead.id, accept?.existing === true)
  return {
    ignoredColumns: ignored,
    faults,
    lines,
    leftOut,
    unknownShops: shops
      .filter((shop) => !shop.accepted)
      .map(({ name, nearest, lines: on }) => ({ name, nearest, lines: on })),
    newParties: input?.parties.map((party) => party.name) ?? [],
    newAssemblies:
      lead === undefined
        ? []
        : made.map(({ name, nearest, lines: on }) => ({
            name,
            nearest,
            lines: on,
            custodian: lead.id,
          })),
    withoutLimits: kept.flatMap(({ read }) =>
      read.checks
        .filter(
          (check) => check.type === 'reading' && check.least === null && check.greatest === null,
        )
        .map((check) => ({ line: read.line, name: check.name })),
    ),
    input,
  }
}
