import * as z from 'zod/mini'
import { missingCheck } from '../build-order/check-add.ts'
import { setHold } from '../build-order/hold-set.ts'
import { drawnLink } from '../build-order/link-draw.ts'
import { nextNumber } from '../build-order/stage-add.ts'
import { plannedStage } from '../build-order/stage-fields.ts'
import { newAssembly } from '../custody/assembly-add.ts'
import { leadOf, managesLead, ownerOf } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { type Condition, wrongState } from '../record/condition.ts'
import type { CoatKind } from '../record/entities/coating.ts'
import type { Assembly } from '../record/entities/things.ts'
import type { Hazard, Stage } from '../record/entities/work.ts'
import type { Entity } from '../record/entity.ts'
import { type AssemblyId, PartyId, type StageId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { folded } from '../record/same-name.ts'
import { Line } from '../record/scalars.ts'
import { all, must } from '../record/table.ts'
import { chooseStages, scopes } from './choose-stages.ts'
import { fullRestoration, type LibraryStage } from './library.ts'

/** Assemblies whose key says too little. */
const NAMES: { readonly [key: string]: string } = {
  bootlid: 'Boot lid',
  front_susp: 'Front suspension',
  rear_susp: 'Rear suspension',
  prop: 'Propeller shaft',
  fuel: 'Fuel system',
  dash: 'Dashboard',
  electrics: 'Electrical parts',
}
/** What a library calls the car itself is no assembly; the shell carries all others. */
const WHOLE = 'project'
const SHELL = 'shell'
/** Never on the shell as the car comes in: parts of another, or lots. */
const LOOSE: readonly string[] = [SHELL, 'head', 'panels', 'fasteners']

const SAFETY_GROUPS = ['brakes', 'steering', 'suspension', 'fuel']
const SAFETY_KEYS = ['met.weld', 'met.sills']
/** Where a shop's bench work ends, it goes to the lead. */
const ENDS_WITH_HANDOVER = [
  'eng.ready',
  'gb.build',
  'ax.build',
  'loo.fit',
  'pla.plate',
  'coa.parts',
  'tri.head',
]

const HAZARDS: { readonly [word: string]: readonly Hazard[] } = {
  dust: ['dust'],
  isocyanate: ['isocyanate', 'solvent'],
  crush: ['crushing'],
  chemical: ['chemicals'],
  cut: ['cutting'],
  lift: ['lifting'],
  stored_energy: ['springs'],
  solvent: ['solvent'],
  lead: ['lead'],
  structural: ['structure'],
  poison: ['coolant'],
  road: ['road'],
}
const hazardsOf = ({ hazard, group }: LibraryStage): Hazard[] =>
  hazard === null
    ? []
    : hazard === 'fire'
      ? [group === 'metal' ? 'hot work' : 'fuel']
      : [...(HAZARDS[hazard] ?? [])]

const COATS: { readonly [key: string]: CoatKind } = {
  'bl.hold': 'epoxy',
  'ep.shell': 'epoxy',
  'ep.panels': 'epoxy',
  'hb.shell': 'high build',
  'hb.panels': 'high build',
  'seal.shell': 'isolator',
  'seal.panels': 'isolator',
  'col.shell': 'colour',
  'col.panels': 'colour',
  'lac.shell': 'lacquer',
  'lac.panels': 'lacquer',
  'lac.flow': 'lacquer',
}
/** Data sheets that say nothing else: readings half an hour old at most (common practice), 3 °C and 85 % (given with ISO 12944-7, read). */
const SPRAYED = { airAgeMost: 30, dewMarginLeast: 3, humidityMost: 85 }

/** A source stands in one line on the card. */
const inOneLine = (note: string): string => (note.length <= 200 ? note : `${note.slice(0, 199)}…`)

const title = (key: string): string =>
  NAMES[key] ?? `${key.charAt(0).toUpperCase()}${key.slice(1).replaceAll('_', ' ')}`

/**
 * Makes a build order from the library: stages, links, checks and points of a choice, and the assemblies that it works on as far as they
 * aren't there. `parties`: who does the work of a trade; the lead does the rest. From then on it is the project's own.
 * Refuses where there is a stage already: a library begins a build order, and never changes one.
 */
export const libraryBuild = defineCommand({
  name: 'library.build',
  input: z.strictObject({
    scope: z.enum(scopes),
    options: z.array(Line).check(z.maxLength(20)),
    parties: z.array(z.strictObject({ trade: Line, party: PartyId })).check(z.maxLength(50)),
  }),
  may: (actor, record) => managesLead(actor, record),
  decide(record, input, ctx) {
    const lead = leadOf(record)
    if (lead === undefined) return refusal(wrongState(record.id, 'without a lead', 'with a lead'))
    const there = all(record.stages).filter(({ removedAt }) => removedAt === null)
    if (there.length > 0) return refusal(wrongState(record.id, 'with stages', 'without a stage'))
    const wrong: Condition[] = input.parties.flatMap(({ party }) => {
      const { leftAt, id } = must(record.parties, party)
      return leftAt === null ? [] : [wrongState(id, 'no longer taking part', 'taking part')]
    })
    if (wrong.length > 0) return refusal(...wrong)

    const owner = ownerOf(record)?.id ?? lead.id
    const byTrade = new Map(input.parties.map(({ trade, party }) => [trade, party]))
    /** What owners and inspectors sign is presented to them by the lead. */
    const worker = (trade: string): PartyId =>
      trade === 'owner' || trade === 'licensed_inspector'
        ? lead.id
        : (byTrade.get(trade) ?? lead.id)
    const signer = (trade: string): PartyId =>
      trade === 'owner' ? owner : (byTrade.get(trade) ?? lead.id)

    const { stages, links } = chooseStages(fullRestoration, input)
    const assemblies = assembliesOf(record, stages, lead.id, ctx)
    const ids = new Map<string, StageId>(stages.map(({ key }) => [key, ctx.newId('stg')]))
    const first = nextNumber(record)
    const things = (keys: readonly string[]): AssemblyId[] =>
      keys.flatMap((key) => assemblies.get(key)?.id ?? [])
    const made: Entity[] = [...new Set(assemblies.values())].filter(
      ({ id }) => !record.assemblies.rows.has(id),
    )
    stages.forEach((of, i) => {
      const id = ids.get(of.key)
      if (id === undefined) return
      made.push(stageOf(of, id, first + i, things, worker(of.trade), lead.id, record))
      of.checks.forEach((check, position) => {
        const limited = check.low !== undefined || check.high !== undefined
        made.push({
          ...missingCheck(ctx.newId('chk'), record.id, {
            stage: id,
            position: position + 1,
            type: check.kind,
            name: check.name,
            unit: check.unit === 'um' ? 'µm' : (check.unit ?? null),
            least: check.low ?? null,
            greatest: check.high ?? null,
          }),
          basis: limited ? 'typical' : null,
          limitSource: limited ? inOneLine(check.note) : null,
          limitWanted: check.limit === 'enter',
        })
      })
      if (of.point !== null) {
        const { kind: point, who, what: name } = of.point
        const asked = { stage: id, point, name, party: signer(who), person: null }
        made.push(setHold(ctx.newId('hld'), record.id, asked, ctx.happenedAt))
      }
    })
    for (const { from, to, least, greatest, why } of links) {
      const [a, b] = [ids.get(from), ids.get(to)]
      if (a === undefined || b === undefined) continue
      const ends = { from: a, to: b, leastLagHours: least, greatestLagHours: greatest }
      made.push({
        ...drawnLink(ctx.newId('lnk'), record.id, ends),
        why,
        // Cure and flash-off are given for 20 °C of metal.
        curesAt: least > 0 && COATS[from] !== undefined ? 20 : null,
      })
    }
    return changes(...made)
  },
})

/** What the stages work on: by the same name what is there already, else new, on the shell and with the lead. */
function assembliesOf(
  record: ProjectRecord,
  stages: readonly LibraryStage[],
  lead: PartyId,
  ctx: Parameters<typeof libraryBuild.apply>[3],
): ReadonlyMap<string, Assembly> {
  const there = new Map(all(record.assemblies).map((one) => [folded(one.name), one]))
  const named = new Set(
    stages.flatMap(({ assemblies, fits, removes, needs }) => [
      ...assemblies,
      ...fits,
      ...removes,
      ...needs.fitted,
      ...needs.off,
    ]),
  )
  named.delete(WHOLE)
  const of = (key: string): Assembly =>
    there.get(folded(title(key))) ??
    newAssembly(ctx.newId('asm'), record.id, title(key), lead, ctx.happenedAt)
  const shell = of(SHELL)
  return new Map(
    [SHELL, ...named].map((key) => {
      const one = key === SHELL ? shell : of(key)
      const isNew = !record.assemblies.rows.has(one.id)
      const onShell = isNew && !LOOSE.includes(key)
      return [
        key,
        {
          ...one,
          host: onShell ? shell.id : one.host,
          holdsFuel: one.holdsFuel || (isNew && key === 'fuel'),
        },
      ]
    }),
  )
}

function stageOf(
  of: LibraryStage,
  id: StageId,
  number: number,
  things: (keys: readonly string[]) => AssemblyId[],
  party: PartyId,
  lead: PartyId,
  record: ProjectRecord,
): Stage {
  const [shell] = things([SHELL])
  const lays = COATS[of.key] ?? null
  return {
    ...plannedStage(id, record.id, number, of.name, party),
    group: of.group.replaceAll('_', ' ').replace('highbuild', 'high build'),
    assemblies: things(of.assemblies),
    host: of.fits.length > 0 ? (shell ?? null) : null,
    fits: things(of.fits),
    removes: things(of.removes),
    needsFitted: things(of.needs.fitted),
    needsOff: things(of.needs.off),
    hoursLeast: of.hours.a,
    hoursLikely: of.hours.m,
    hoursMost: of.hours.b,
    safety: SAFETY_GROUPS.includes(of.group) || SAFETY_KEYS.includes(of.key),
    caution: of.caution,
    hazards: hazardsOf(of),
    ...(lays === null ? {} : SPRAYED),
    lays,
    people: of.people,
    trade: of.trade.replaceAll('_', ' '),
    madeFrom: of.key,
    handoverTo: ENDS_WITH_HANDOVER.includes(of.key) && party !== lead ? lead : null,
  }
}
