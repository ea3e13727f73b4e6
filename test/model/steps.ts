import { projectCommands } from '../../lib/command/registry.ts'
import { shopCommands } from '../../lib/command/set-up-commands.ts'
import { canonicalJson } from '../../lib/record/canonical-json.ts'
import type { Condition } from '../../lib/record/condition.ts'
import type { ChangeOrder } from '../../lib/record/entities/money.ts'
import type { Concession, Stage } from '../../lib/record/entities/work.ts'
import { type Entity, entitySchemas, isKind, type Kind } from '../../lib/record/entity.ts'
import type { ProjectRecord } from '../../lib/record/project-record.ts'
import { all } from '../../lib/record/table.ts'
import { custodyUnmet, mayBeConceded, openChecks, standsInTheWay, touches } from './naive-gate.ts'
import { wrongInBook, wrongInProject } from './standing.ts'
import type { Played, Press, World } from './world.ts'

/** What is wrong with one press: with what it made, with how it got there, and with what stands afterwards. */
export function wrongAfter(played: Played): string[] {
  const { press, before, after, entities, outcome } = played
  if (outcome.outcome === 'refusal' || outcome.outcome === 'unknown')
    return [...played.faults, ...outcome.conditions.flatMap(offered)]
  if (outcome.outcome !== 'changes') return [...played.faults]
  const wrong = [...played.faults, ...entities.flatMap((entity) => malformed(after, entity))]
  if (new Set(entities.map(({ id }) => id)).size < entities.length)
    wrong.push('puts one entity twice')
  for (const [id, book] of after.books)
    if (before.books.get(id) !== book) wrong.push(...wrongInBook(book))
  for (const [id, record] of after.projects) {
    const was = before.projects.get(id)
    if (was === record) continue
    wrong.push(...wrongInProject(record), ...slotsDiffer(after, record))
    if (was !== undefined) wrong.push(...wrongStep(played, was, record))
  }
  return wrong.map((what) => `${press.name}: ${what}`)
}

/** A press that a refusal offers is one that its command takes, but for what the person still has to say. */
function offered({ rule, clearedWith }: Condition): string[] {
  if (clearedWith === null) return []
  const { command, input } = clearedWith
  const schema = schemas.get(command)
  if (schema === undefined) return [`${rule} is cleared with ${command}, which there isn’t`]
  const issues = schema.safeParse(input).error?.issues ?? []
  return issues
    .filter(({ path }) => path.length === 0 || String(path[0]) in input)
    .map(({ path, message }) => `${rule} offers ${command} with ${path.join('.')}: ${message}`)
}

const schemas = new Map(
  Object.entries({ ...projectCommands, ...shopCommands }).map(([name, { input }]) => [name, input]),
)

const parsers: { readonly [K in Kind]: { safeParse(value: unknown): { success: boolean } } } =
  entitySchemas

/** It parses as its kind, has no field besides, and all that it names is there. */
function malformed(after: World, entity: Entity): string[] {
  const known = Object.keys(entitySchemas[entity.kind].shape)
  const extra = Object.keys(entity).filter((field) => !known.includes(field))
  const missing = Object.entries(entity).filter(([, value]) => value === undefined)
  return [
    ...(parsers[entity.kind].safeParse(entity).success ? [] : [`makes no ${entity.kind}`]),
    ...extra.map((field) => `${entity.kind} has a field ${field}`),
    ...missing.map(([field]) => `${entity.kind} has nothing in ${field}`),
    ...idsIn(entity)
      .filter((id) => !isThere(after, entity, id))
      .map((id) => `${entity.kind} names ${id}, which isn’t there`),
  ]
}

/** Every id in an entity, however deep; people are kept outside the records. */
function idsIn(value: unknown): string[] {
  if (typeof value === 'string') return /^(?!psn)[a-z]{3}_[0-9a-z]+$/.test(value) ? [value] : []
  if (typeof value !== 'object' || value === null) return []
  return Object.values(value).flatMap(idsIn)
}

function isThere(world: World, entity: Entity, id: string): boolean {
  const project = 'project' in entity ? entity.project : entity.kind === 'project' ? entity.id : ''
  if (world.projects.get(project)?.versions.has(id) === true) return true
  return [...world.books.values()].some((book) => book.versions.has(id))
}

/** A slot is the same in its project and in the book of its bay's shop. */
const slotsDiffer = (world: World, record: ProjectRecord): string[] =>
  all(record.slots)
    .filter((slot) => world.books.get(slot.shop)?.slots.rows.get(slot.id) !== slot)
    .map(({ id }) => `${id} is another in its shop’s book`)

function wrongStep(played: Played, was: ProjectRecord, is: ProjectRecord): string[] {
  const { press } = played
  return [
    ...all(is.stages).flatMap((stage) => {
      const before = was.stages.rows.get(stage.id)
      return before === undefined || before === stage
        ? []
        : wrongMove(played, was, is, before, stage)
    }),
    ...custodyMoves(played, was, is),
    ...conceded(was, is),
    ...takenBack(press, was, is),
    ...answered(was, is),
    ...gone(was, is),
  ]
}

function wrongMove(
  { press }: Played,
  was: ProjectRecord,
  is: ProjectRecord,
  before: Stage,
  stage: Stage,
): string[] {
  const say = (what: string) => `${stage.name}: ${what}`
  const wrong: string[] = []
  if (stage.state === 'in work' && before.state !== 'in work') {
    const unmet =
      press.name === 'stage.start'
        ? standsInTheWay(was, before, press.happenedAt)
        : press.name === 'stage.resume'
          ? standsInTheWay(was, before, press.happenedAt).filter(
              ({ rule }) => rule !== 'greatest-lag',
            )
          : custodyUnmet(was, before)
    wrong.push(...unmet.map(({ rule, entity }) => say(`in work while unmet ${rule} ${entity}`)))
  }
  if (press.name === 'stage.reportDone' && before.state !== stage.state)
    if (stage.state !== 'in doubt' || stage.reported === null)
      wrong.push(say('reported work is not in doubt'))
  if (stage.state === 'signed off' && before.state !== 'signed off') {
    if (openChecks(is, stage).length > 0) wrong.push(say('signed off without its checks'))
    const from = press.name === 'stage.confirm' ? ['in doubt'] : ['in work', 'paused', 'ended']
    if (!from.includes(before.state)) wrong.push(say(`signed off from ${before.state}`))
  }
  if (stage.endedAt !== null && stage.endedAt > press.now) wrong.push(say('ended in the future'))
  const mayChange = press.name === 'stage.describe' || press.name === 'stage.give'
  if (before.state !== 'planned' && canonicalJson(asked(before)) !== canonicalJson(asked(stage)))
    if (!mayChange && stage.state !== 'ended' && stage.state !== 'in doubt')
      wrong.push(say('what was asked of it changed after its start'))
  return wrong
}

/** What others relied on when the work began. */
const asked = ({
  party,
  assemblies,
  safety,
  needsOff,
  needsFitted,
  countersigns,
  changeOrder,
}: Stage) => ({
  party,
  assemblies,
  safety,
  needsOff,
  needsFitted,
  countersigns,
  changeOrder,
})

/** Only a receipt that isn't a refusal moves custody, and only of what was released, with what is fitted to it. */
function custodyMoves({ press }: Played, was: ProjectRecord, is: ProjectRecord): string[] {
  const handover = is.handovers.rows.get(String(press.input.handover))
  return all(is.assemblies).flatMap((assembly) => {
    const before = was.assemblies.rows.get(assembly.id)
    if (before === undefined || before.custodian === assembly.custodian) return []
    const received =
      press.name === 'handover.receive' &&
      handover?.state === 'received' &&
      handover.from === before.custodian &&
      handover.to === assembly.custodian &&
      hostsOf(was, assembly.id).some((id) => handover.assemblies.some((named) => named === id))
    const busy = all(is.stages).filter(
      (stage) =>
        stage.state === 'in work' &&
        stage.removedAt === null &&
        touches(stage).includes(assembly.id),
    )
    return [
      ...(received ? [] : [`${assembly.name} changed hands without a receipt`]),
      ...busy.map((stage) => `${assembly.name} changed hands in the middle of ${stage.name}`),
    ]
  })
}

/** An assembly, and all that it is fitted to, upwards. */
function hostsOf(record: ProjectRecord, id: string): string[] {
  const host = record.assemblies.rows.get(id)?.host ?? null
  return host === null ? [id] : [id, ...hostsOf(record, host)]
}

/** Somebody has said yes to it: a stage that goes to another party changes only who must. */
const hasNewYes = (was: ProjectRecord, { id, parties }: Concession): boolean =>
  parties.length > (was.concessions.rows.get(id)?.parties.length ?? 0)

/** Safety is never conceded, nor what nobody may concede. */
function conceded(was: ProjectRecord, is: ProjectRecord): string[] {
  return all(is.concessions)
    .filter((one) => one.withdrawnAt === null && hasNewYes(was, one))
    .filter((one) => {
      const stage = was.stages.rows.get(one.stage)
      return stage === undefined || !mayBeConceded(was, stage, one)
    })
    .map((one) => `${one.rule} of ${one.entity} conceded, which nobody may`)
}

const undoes = ['hold.takeBack', 'hold.remove']
const rests = ['in work', 'ended', 'signed off', 'in doubt']

/** What work rests on isn't taken back under it: a hold point's release, a concession. */
function takenBack({ name }: Press, was: ProjectRecord, is: ProjectRecord): string[] {
  const holds = all(is.holds)
    .filter((hold) => undoes.includes(name) && was.holds.rows.get(hold.id) !== hold)
    .filter((hold) =>
      all(is.links).some(
        ({ from, to, removedAt }) =>
          from === hold.stage &&
          removedAt === null &&
          rests.includes(is.stages.rows.get(to)?.state ?? ''),
      ),
    )
  const concessions = all(is.concessions)
    .filter((one) => one.withdrawnAt !== null && was.concessions.rows.get(one.id) !== one)
    .filter((one) => {
      const state = is.stages.rows.get(one.stage)?.state ?? ''
      return one.rule === 'check'
        ? state === 'signed off'
        : ['in work', 'ended', 'signed off'].includes(state)
    })
  return [
    ...holds.map(({ id }) => `${id} is taken back under what follows it`),
    ...concessions.map(({ id }) => `${id} is withdrawn under the work that rests on it`),
  ]
}

/** A yes or a no adds who, when and how, and changes nothing of what was asked. */
function answered(was: ProjectRecord, is: ProjectRecord): string[] {
  return all(is.changeOrders)
    .filter(({ state }) => state === 'approved' || state === 'declined')
    .filter((order) => {
      const before = was.changeOrders.rows.get(order.id)
      return (
        before !== order &&
        canonicalJson(before === undefined ? null : priced(before)) !== canonicalJson(priced(order))
      )
    })
    .map(({ number }) => `change order ${number} is another after its answer`)
}

const priced = ({
  number,
  title,
  text,
  reason,
  party,
  bears,
  days,
  files,
  sentAt,
}: ChangeOrder) => ({
  number,
  title,
  text,
  reason,
  party,
  bears,
  days,
  files,
  sentAt,
})

/** Nothing is ever deleted. */
const gone = (was: ProjectRecord, is: ProjectRecord): string[] =>
  [...was.versions.keys()].filter((id) => !is.versions.has(id)).map((id) => `${id} is gone`)

/** Entities of one kind that a press made or changed. */
export const made = <K extends Kind>(played: Played, kind: K) =>
  played.entities.filter(isKind(kind))
