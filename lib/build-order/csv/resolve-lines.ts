import type { AssemblyId, PartyId, PersonId, StageId } from '../../record/ids.ts'
import type { ProjectRecord } from '../../record/project-record.ts'
import { folded } from '../../record/same-name.ts'
import { all } from '../../record/table.ts'
import type { AfterLine } from './after-cell.ts'
import { byName } from './by-name.ts'
import type { Column } from './columns.ts'
import { nearestAmong } from './nearest.ts'
import type { ReadLine } from './read-lines.ts'
import type { Fact, Fault } from './reading-fault.ts'
import { type NamedPerson, whoIsWho } from './who.ts'

/** Something that the file names and the record doesn't have. */
export interface Unknown {
  readonly key: string
  readonly name: string
  readonly nearest: string | null
  readonly lines: number[]
}

/** A line with everything it names looked up: ids of the record, keys of what is new. */
export interface Resolved {
  readonly read: ReadLine
  readonly party: PartyId | string
  readonly assemblies: readonly (AssemblyId | string)[]
  /** `from` is a line of the file, or a stage of the record. */
  readonly after: readonly {
    readonly from: number | StageId
    readonly leastLagHours: number
    readonly greatestLagHours: number | null
  }[]
  readonly holds: readonly {
    readonly point: 'hold' | 'witness'
    readonly party: PartyId | string
    readonly person: PersonId | null
  }[]
}

type Note = (read: ReadLine, column: Column, fact: Fact) => void
type Measure = (a: string, b: string) => number

/** Keeps what the record doesn't have, each under a key of its own. */
function unknowns(prefix: string, nearest: (name: string) => string | null) {
  const met = new Map<string, Unknown>()
  const meet = (name: string, line: number): Unknown => {
    const known = met.get(folded(name))
    if (known !== undefined) {
      if (known.lines.at(-1) !== line) known.lines.push(line)
      return known
    }
    const one = { key: `${prefix}${met.size + 1}`, name, nearest: nearest(name), lines: [line] }
    met.set(folded(name), one)
    return one
  }
  return { met, meet }
}

/** Looks up what stages wait for: a line by number, a name in the file, a name in the record. */
function predecessors(
  lines: readonly ReadLine[],
  record: ProjectRecord,
  measure: Measure,
  note: Note,
) {
  const there = all(record.stages).filter((stage) => stage.removedAt === null)
  const byNumber = new Map(lines.map((line) => [line.number, line]))
  const inFile = byName(lines.map((line) => [line.name, line] as const))
  const inRecord = byName(there.map((stage) => [stage.name, stage.id] as const))
  const nearest = nearestAmong(
    [...lines, ...there].map((stage) => stage.name),
    measure,
  )
  const find = (read: ReadLine, stage: AfterLine['stage']): number | StageId | undefined => {
    if ('number' in stage) {
      const found = byNumber.get(stage.number)
      if (found === undefined)
        note(read, 'after', { what: 'no stage on line', number: stage.number })
      return found?.line
    }
    const { name } = stage
    const found = [inFile(name).map((line) => line.line), inRecord(name)].find(
      (several) => several.length > 0,
    )
    if (found === undefined)
      note(read, 'after', { what: 'unknown', kind: 'stage', name, nearest: nearest(name) })
    else if (found.length > 1) {
      const on = found.filter((one) => typeof one === 'number')
      note(read, 'after', { what: 'ambiguous', kind: 'stage', name, lines: on })
      return undefined
    }
    return found?.[0]
  }
  return (read: ReadLine): Resolved['after'] => {
    const met = new Set<number | StageId>()
    return read.after.flatMap((after) => {
      const from = find(read, after.stage)
      if (from === undefined) return []
      if (from === read.line) {
        note(read, 'after', { what: 'itself' })
        return []
      }
      if (met.has(from)) {
        const name = 'name' in after.stage ? after.stage.name : String(after.stage.number)
        note(read, 'after', { what: 'twice', name })
      }
      met.add(from)
      return [
        { from, leastLagHours: after.leastLagHours, greatestLagHours: after.greatestLagHours },
      ]
    })
  }
}

/** Looks up who holds. */
function holders(
  record: ProjectRecord,
  people: readonly NamedPerson[],
  newParty: (name: string) => string | undefined,
  measure: Measure,
  note: Note,
) {
  const who = whoIsWho(record, people)
  const nearest = nearestAmong(who.names, measure)
  return (read: ReadLine): Resolved['holds'] => {
    const met = new Set<string>()
    return read.holds.flatMap(({ point, who: name }) => {
      const found = who.find(name)
      const [one] = found
      const made = newParty(name)
      if (found.length > 1) {
        note(read, 'hold', { what: 'ambiguous', kind: 'who', name, lines: [] })
        return []
      }
      if (one === undefined && made === undefined) {
        note(read, 'hold', { what: 'unknown', kind: 'who', name, nearest: nearest(name) })
        return []
      }
      const hold = { point, party: one?.party ?? made ?? '', person: one?.person ?? null }
      const key = `${point} ${hold.party} ${hold.person}`
      if (met.has(key)) note(read, 'hold', { what: 'twice', name })
      met.add(key)
      return [hold]
    })
  }
}

/** Looks up everything that the lines name. Assemblies that are not in the record are new; shops only where accepted. */
export function resolveLines(
  lines: readonly ReadLine[],
  record: ProjectRecord,
  people: readonly NamedPerson[],
  accept: { readonly shops: readonly string[]; readonly existing: boolean },
  measure: Measure,
) {
  const faults: Fault[] = []
  const note: Note = (read, column, fact) => faults.push({ ...fact, line: read.line, column })

  const active = all(record.parties).filter((party) => party.leftAt === null)
  const party = byName(active.map((one) => [one.name, one.id] as const))
  const shops = unknowns(
    'party',
    nearestAmong(
      active.map((one) => one.name),
      measure,
    ),
  )
  const accepted = new Set(accept.shops.map(folded))
  const shopOf = (read: ReadLine): PartyId | string => {
    if (read.shop === '') return ''
    const found = party(read.shop)
    if (found.length > 1)
      note(read, 'shop', { what: 'ambiguous', kind: 'shop', name: read.shop, lines: [] })
    if (found[0] !== undefined) return found[0]
    const { key, name, nearest } = shops.meet(read.shop, read.line)
    if (!accepted.has(folded(name)))
      note(read, 'shop', { what: 'unknown', kind: 'shop', name: read.shop, nearest })
    return key
  }

  const there = all(record.assemblies)
  const assembly = byName(there.map((one) => [one.name, one.id] as const))
  const assemblies = unknowns(
    'assembly',
    nearestAmong(
      there.map((one) => one.name),
      measure,
    ),
  )
  const assembliesOf = (read: ReadLine): (AssemblyId | string)[] => {
    const met = new Set<string>()
    return read.assemblies.map((name) => {
      const found = assembly(name)
      if (found.length > 1)
        note(read, 'assembly', { what: 'ambiguous', kind: 'assembly', name, lines: [] })
      const one = found[0] ?? assemblies.meet(name, read.line).key
      if (met.has(one)) note(read, 'assembly', { what: 'twice', name })
      met.add(one)
      return one
    })
  }

  const stages = all(record.stages).filter((stage) => stage.removedAt === null)
  const numbers = byName(stages.map((stage) => [stage.name, stage.number] as const))
  const afterOf = predecessors(lines, record, measure, note)
  // Shops first: a hold may name one that comes with a later line.
  const withShops = lines.map((read) => ({ read, party: shopOf(read) }))
  const newParty = (name: string) =>
    accepted.has(folded(name)) ? shops.met.get(folded(name))?.key : undefined
  const holdsOf = holders(record, people, newParty, measure, note)
  const resolved = withShops.map(({ read, party: own }): Resolved => {
    const [number] = numbers(read.name)
    if (number !== undefined && !accept.existing)
      note(read, 'stage', { what: 'exists', name: read.name, number })
    return {
      read,
      party: own,
      assemblies: assembliesOf(read),
      after: afterOf(read),
      holds: holdsOf(read),
    }
  })
  return {
    resolved,
    faults,
    shops: [...shops.met.values()].map((shop) => ({
      ...shop,
      accepted: accepted.has(folded(shop.name)),
    })),
    assemblies: [...assemblies.met.values()],
  }
}
