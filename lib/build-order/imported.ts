import { newAssembly } from '../custody/assembly-add.ts'
import type { Context } from '../record/command.ts'
import { type Condition, plain } from '../record/condition.ts'
import type { Party } from '../record/entities/people.ts'
import type { Assembly } from '../record/entities/things.ts'
import type { Check, Hold, Link, Stage } from '../record/entities/work.ts'
import type { Entity } from '../record/entity.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { folded } from '../record/same-name.ts'
import { all } from '../record/table.ts'
import { badInput } from './bad-input.ts'
import type { BuildOrderImport } from './build-order-import.ts'
import { missingCheck } from './check-add.ts'
import { wrongLimits } from './check-limits.ts'
import { circlesAmong } from './circles.ts'
import { setHold } from './hold-set.ts'
import { drawnLink } from './link-draw.ts'
import { notOfParty } from './named-person.ts'
import { nextNumber } from './stage-add.ts'
import { hoursInOrder, plannedStage } from './stage-fields.ts'

/** What an import would make, and everything that is wrong with it. */
export interface Imported {
  readonly entities: readonly Entity[]
  readonly wrong: readonly Condition[]
}

/** Collects what is wrong, by the field of the input. */
interface Faults {
  readonly wrong: Condition[]
  readonly bad: (field: string, why: string) => void
  readonly exists: (entity: string, field: string) => void
}

/** What has been met before in the list, told by `field` once more. */
function onlyOnce(): (key: string) => boolean {
  const met = new Set<string>()
  return (key) => {
    const first = !met.has(key)
    met.add(key)
    return first
  }
}

function newParties(
  record: ProjectRecord,
  input: BuildOrderImport,
  ctx: Context,
  faults: Faults,
): ReadonlyMap<string, Party> {
  const active = all(record.parties).filter((party) => party.leftAt === null)
  const names = new Map(active.map((party) => [folded(party.name), party.id]))
  const parties = new Map<string, Party>(active.map((party) => [party.id, party]))
  input.parties.forEach(({ key, name }, i) => {
    const there = names.get(folded(name))
    if (there !== undefined) faults.exists(there, `parties.${i}.name`)
    const party: Party = {
      kind: 'party',
      id: ctx.newId('pty'),
      project: record.id,
      name,
      role: 'shop',
      lead: false,
      shop: null,
      bills: 'owner',
      leftAt: null,
    }
    names.set(folded(name), party.id)
    parties.set(key, party)
  })
  return parties
}

function newAssemblies(
  record: ProjectRecord,
  input: BuildOrderImport,
  parties: ReadonlyMap<string, Party>,
  ctx: Context,
  faults: Faults,
): ReadonlyMap<string, Assembly> {
  const there = all(record.assemblies)
  const names = new Map(there.map((assembly) => [folded(assembly.name), assembly.id]))
  const assemblies = new Map<string, Assembly>(there.map((assembly) => [assembly.id, assembly]))
  input.assemblies.forEach(({ key, name, custodian }, i) => {
    const same = names.get(folded(name))
    if (same !== undefined) faults.exists(same, `assemblies.${i}.name`)
    const party = parties.get(custodian)
    if (party === undefined) {
      faults.bad(`assemblies.${i}.custodian`, 'no such party')
      return
    }
    const assembly = newAssembly(ctx.newId('asm'), record.id, name, party.id, ctx.happenedAt)
    names.set(folded(name), assembly.id)
    assemblies.set(key, assembly)
  })
  return assemblies
}

function newStages(
  record: ProjectRecord,
  input: BuildOrderImport,
  parties: ReadonlyMap<string, Party>,
  assemblies: ReadonlyMap<string, Assembly>,
  ctx: Context,
  faults: Faults,
): ReadonlyMap<string, Stage> {
  const there = all(record.stages).filter((stage) => stage.removedAt === null)
  const names = new Map(there.map((stage) => [folded(stage.name), stage.id]))
  const first = nextNumber(record)
  const stages = new Map<string, Stage>()
  input.stages.forEach((line, i) => {
    const same = names.get(folded(line.name))
    if (same !== undefined && input.acceptExisting !== true) faults.exists(same, `stages.${i}.name`)
    if (stages.has(line.key)) faults.bad(`stages.${i}.key`, 'named twice')
    if (!hoursInOrder(line.hoursLeast, line.hoursLikely, line.hoursMost))
      faults.bad(`stages.${i}.hours`, 'least, likely and most must go up')
    const worked = line.assemblies.flatMap((ref) => {
      const assembly = assemblies.get(ref)
      if (assembly === undefined) faults.bad(`stages.${i}.assemblies`, 'no such assembly')
      return assembly === undefined ? [] : [assembly.id]
    })
    if (new Set(worked).size < worked.length) faults.bad(`stages.${i}.assemblies`, 'named twice')
    const party = parties.get(line.party)
    if (party === undefined) {
      faults.bad(`stages.${i}.party`, 'no such party')
      return
    }
    const id = ctx.newId('stg')
    stages.set(line.key, {
      ...plannedStage(id, record.id, first + i, line.name, party.id),
      assemblies: worked,
      hoursLeast: line.hoursLeast,
      hoursLikely: line.hoursLikely,
      hoursMost: line.hoursMost,
    })
  })
  return stages
}

function newLinks(
  record: ProjectRecord,
  input: BuildOrderImport,
  stages: ReadonlyMap<string, Stage>,
  ctx: Context,
  faults: Faults,
): readonly Link[] {
  const once = onlyOnce()
  const links = input.links.flatMap((line, i): Link[] => {
    const there = record.stages.rows.get(line.from)
    const from = stages.get(line.from) ?? (there?.removedAt === null ? there : undefined)
    const to = stages.get(line.to)
    if (from === undefined) faults.bad(`links.${i}.from`, 'no such stage')
    if (to === undefined) faults.bad(`links.${i}.to`, 'no such stage')
    if (from === undefined || to === undefined) return []
    if (line.greatestLagHours !== null && line.greatestLagHours < line.leastLagHours)
      faults.bad(`links.${i}.greatestLagHours`, 'the greatest lag is less than the least')
    if (!once(`${from.id} ${to.id}`)) faults.bad(`links.${i}`, 'named twice')
    return [
      drawnLink(ctx.newId('lnk'), record.id, {
        from: from.id,
        to: to.id,
        leastLagHours: line.leastLagHours,
        greatestLagHours: line.greatestLagHours,
      }),
    ]
  })
  for (const circle of circlesAmong(links)) {
    faults.wrong.push({ ...plain(circle[0] ?? record.id), rule: 'circle', stages: circle })
  }
  return links
}

function newChecks(
  record: ProjectRecord,
  input: BuildOrderImport,
  stages: ReadonlyMap<string, Stage>,
  ctx: Context,
  faults: Faults,
): readonly Check[] {
  const once = onlyOnce()
  const positions = new Map<string, number>()
  return input.checks.flatMap((line, i): Check[] => {
    const stage = stages.get(line.stage)
    if (stage === undefined) {
      faults.bad(`checks.${i}.stage`, 'no such stage')
      return []
    }
    if (!once(JSON.stringify([stage.id, line.type, line.name])))
      faults.bad(`checks.${i}.name`, 'named twice')
    faults.wrong.push(...wrongLimits(record.id, line, `checks.${i}.`))
    const position = (positions.get(stage.id) ?? 0) + 1
    positions.set(stage.id, position)
    return [missingCheck(ctx.newId('chk'), record.id, { ...line, stage: stage.id, position })]
  })
}

function newHolds(
  record: ProjectRecord,
  input: BuildOrderImport,
  parties: ReadonlyMap<string, Party>,
  stages: ReadonlyMap<string, Stage>,
  ctx: Context,
  faults: Faults,
): readonly Hold[] {
  const once = onlyOnce()
  return input.holds.flatMap((line, i): Hold[] => {
    const stage = stages.get(line.stage)
    const party = parties.get(line.party)
    if (stage === undefined) faults.bad(`holds.${i}.stage`, 'no such stage')
    if (party === undefined) faults.bad(`holds.${i}.party`, 'no such party')
    if (stage === undefined || party === undefined) return []
    if (line.person !== null)
      faults.wrong.push(
        ...notOfParty(record, party, line.person, record.id, ctx, `holds.${i}.person`),
      )
    if (!once(`${stage.id} ${line.point} ${party.id} ${line.person}`))
      faults.bad(`holds.${i}.party`, 'named twice')
    const asked = { ...line, stage: stage.id, party: party.id }
    return [setHold(ctx.newId('hld'), record.id, asked, ctx.happenedAt)]
  })
}

/** Everything that the import would make, and everything that is wrong with it. @throws {Hidden} */
export function imported(record: ProjectRecord, input: BuildOrderImport, ctx: Context): Imported {
  const wrong: Condition[] = []
  const faults: Faults = {
    wrong,
    bad: (field, why) => {
      wrong.push(badInput(record.id, field, why))
    },
    exists: (entity, field) => {
      wrong.push({ ...plain(entity), rule: 'exists', field })
    },
  }
  const keys = [...input.parties, ...input.assemblies, ...input.stages].map((one) => one.key)
  if (new Set(keys).size < keys.length) faults.bad('key', 'two things have the same')
  const parties = newParties(record, input, ctx, faults)
  const assemblies = newAssemblies(record, input, parties, ctx, faults)
  const stages = newStages(record, input, parties, assemblies, ctx, faults)
  const links = newLinks(record, input, stages, ctx, faults)
  const checks = newChecks(record, input, stages, ctx, faults)
  const holds = newHolds(record, input, parties, stages, ctx, faults)
  const isNew = (entity: { readonly id: string }, table: { rows: ReadonlyMap<string, unknown> }) =>
    !table.rows.has(entity.id)
  const entities: Entity[] = [
    ...[...parties.values()].filter((party) => isNew(party, record.parties)),
    ...[...assemblies.values()].filter((assembly) => isNew(assembly, record.assemblies)),
    ...stages.values(),
    ...links,
    ...checks,
    ...holds,
  ]
  return { entities, wrong }
}
