import * as z from 'zod/mini'
import { worksOn } from '../gate/indexes.ts'
import type { Condition } from '../record/condition.ts'
import { CoatKind } from '../record/entities/coating.ts'
import { DatedThing } from '../record/entities/standing.ts'
import { Hazard, type Stage } from '../record/entities/work.ts'
import {
  AssemblyId,
  ChangeOrderId,
  DecisionId,
  PartyId,
  type ProjectId,
  type StageId,
} from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { Hours, Line, Text } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { LEAST_MARGIN } from '../sums/dew-margin.ts'
import { badInput } from './bad-input.ts'
import { partiesLeft } from './set-up.ts'

const assemblies = z.optional(z.array(AssemblyId).check(z.maxLength(200)))

/** What may be said of a stage besides its name and its party. What is left out stays as it is. */
export const stageFields = {
  group: z.optional(z.nullable(Line)),
  assemblies,
  host: z.optional(z.nullable(AssemblyId)),
  fits: assemblies,
  removes: assemblies,
  needsFitted: assemblies,
  needsOff: assemblies,
  needsBay: z.optional(z.boolean()),
  exclusive: z.optional(z.boolean()),
  hoursLeast: z.optional(z.nullable(Hours)),
  hoursLikely: z.optional(z.nullable(Hours)),
  hoursMost: z.optional(z.nullable(Hours)),
  safety: z.optional(z.boolean()),
  caution: z.optional(z.nullable(Text)),
  hazards: z.optional(z.array(Hazard).check(z.maxLength(19))),
  airAgeMost: z.optional(z.nullable(z.number().check(z.positive(), z.maximum(1_440)))),
  dewMarginLeast: z.optional(z.nullable(z.number().check(z.minimum(LEAST_MARGIN), z.maximum(30)))),
  humidityMost: z.optional(z.nullable(z.number().check(z.positive(), z.maximum(100)))),
  surfaceLeast: z.optional(z.nullable(z.number().check(z.minimum(-20), z.maximum(80)))),
  surfaceMost: z.optional(z.nullable(z.number().check(z.minimum(-20), z.maximum(80)))),
  inDate: z.optional(z.array(DatedThing).check(z.maxLength(4))),
  lays: z.optional(z.nullable(CoatKind)),
  keys: z.optional(z.boolean()),
  people: z.optional(z.int().check(z.minimum(1), z.maximum(20))),
  changeOrder: z.optional(z.nullable(ChangeOrderId)),
  decision: z.optional(z.nullable(DecisionId)),
  handoverTo: z.optional(z.nullable(PartyId)),
  countersigns: z.optional(z.array(PartyId).check(z.maxLength(20))),
  flats: z.optional(z.nullable(z.number().check(z.positive(), z.maximum(1000)))),
}

const StageInput = z.object({ name: z.optional(Line), party: z.optional(PartyId), ...stageFields })
type StageInput = z.infer<typeof StageInput>

/** A planned stage of which nothing is known but its name and its party. */
export const plannedStage = (
  id: StageId,
  project: ProjectId,
  number: number,
  name: string,
  party: PartyId,
): Stage => ({
  kind: 'stage',
  id,
  project,
  number,
  name,
  group: null,
  party,
  assemblies: [],
  host: null,
  fits: [],
  removes: [],
  needsFitted: [],
  needsOff: [],
  needsBay: false,
  exclusive: true,
  hoursLeast: null,
  hoursLikely: null,
  hoursMost: null,
  safety: false,
  caution: null,
  hazards: [],
  precautionsAt: null,
  precautionsBy: null,
  airAgeMost: null,
  dewMarginLeast: null,
  humidityMost: null,
  surfaceLeast: null,
  surfaceMost: null,
  inDate: [],
  lays: null,
  keys: false,
  flats: null,
  people: 1,
  trade: null,
  madeFrom: null,
  changeOrder: null,
  decision: null,
  handoverTo: null,
  countersigns: [],
  state: 'planned',
  startedAt: null,
  startedBy: null,
  workedBy: [],
  pausedAt: null,
  endedAt: null,
  endedBy: null,
  signedOffAt: null,
  reported: null,
  doubt: null,
  removedAt: null,
})

/** What is said, or else what was kept. */
export const or = <T>(given: T | undefined, kept: T): T => (given === undefined ? kept : given)

/** A tick spoke of the hazards that were named then. */
const newHazards = (input: StageInput, stage: Stage): boolean =>
  input.hazards?.some((hazard) => !stage.hazards.includes(hazard)) ?? false

/** The stage with what the input says of it. */
export const describedStage = (stage: Stage, input: StageInput): Stage => ({
  ...stage,
  name: or(input.name, stage.name),
  party: or(input.party, stage.party),
  group: or(input.group, stage.group),
  assemblies: or(input.assemblies, stage.assemblies),
  host: or(input.host, stage.host),
  fits: or(input.fits, stage.fits),
  removes: or(input.removes, stage.removes),
  needsFitted: or(input.needsFitted, stage.needsFitted),
  needsOff: or(input.needsOff, stage.needsOff),
  needsBay: or(input.needsBay, stage.needsBay),
  exclusive: or(input.exclusive, stage.exclusive),
  hoursLeast: or(input.hoursLeast, stage.hoursLeast),
  hoursLikely: or(input.hoursLikely, stage.hoursLikely),
  hoursMost: or(input.hoursMost, stage.hoursMost),
  safety: or(input.safety, stage.safety),
  caution: or(input.caution, stage.caution),
  hazards: or(input.hazards, stage.hazards),
  ...(newHazards(input, stage) && { precautionsAt: null, precautionsBy: null }),
  airAgeMost: or(input.airAgeMost, stage.airAgeMost),
  dewMarginLeast: or(input.dewMarginLeast, stage.dewMarginLeast),
  humidityMost: or(input.humidityMost, stage.humidityMost),
  surfaceLeast: or(input.surfaceLeast, stage.surfaceLeast),
  surfaceMost: or(input.surfaceMost, stage.surfaceMost),
  inDate: or(input.inDate, stage.inDate),
  lays: or(input.lays, stage.lays),
  keys: or(input.keys, stage.keys),
  people: or(input.people, stage.people),
  changeOrder: or(input.changeOrder, stage.changeOrder),
  decision: or(input.decision, stage.decision),
  handoverTo: or(input.handoverTo, stage.handoverTo),
  countersigns: or(input.countersigns, stage.countersigns),
  flats: or(input.flats, stage.flats),
})

/** Hours must not go down from least over likely to most; those not given don't count. */
export const hoursInOrder = (...hours: readonly (number | null)[]): boolean => {
  const given = hours.filter((h) => h !== null)
  return given.every((h, i) => i === 0 || h >= (given[i - 1] ?? h))
}

const lists = ['assemblies', 'fits', 'removes', 'needsFitted', 'needsOff'] as const

/**
 * Everything that is wrong with a stage as it would be.
 * @throws {NoSuchEntity} where it names what isn't in the record. @throws {Hidden}
 */
export function wrongInStage(record: ProjectRecord, stage: Stage): Condition[] {
  const bad = (field: string, why: string) => badInput(stage.id, field, why)
  const wrong: Condition[] = []
  for (const list of lists) {
    for (const assembly of stage[list]) must(record.assemblies, assembly)
    if (new Set(stage[list]).size < stage[list].length) wrong.push(bad(list, 'named twice'))
  }
  if (stage.host !== null) must(record.assemblies, stage.host)
  if (stage.changeOrder !== null) must(record.changeOrders, stage.changeOrder)
  if (stage.decision !== null) must(record.decisions, stage.decision)
  if (stage.fits.length > 0 && stage.host === null)
    wrong.push(bad('host', 'say to what they are fitted'))
  if (stage.host !== null && stage.fits.includes(stage.host))
    wrong.push(bad('fits', 'an assembly can’t be fitted to itself'))
  if (stage.fits.some((id) => stage.removes.includes(id)))
    wrong.push(bad('removes', 'the same assembly can’t be both fitted and taken off'))
  if (stage.needsFitted.some((id) => stage.needsOff.includes(id)))
    wrong.push(bad('needsOff', 'the same assembly can’t be both fitted and off'))
  if (stage.needsBay && worksOn(stage).length === 0)
    wrong.push(bad('assemblies', 'say what is in the bay, or that it needs none'))
  if (!hoursInOrder(stage.hoursLeast, stage.hoursLikely, stage.hoursMost))
    wrong.push(bad('hours', 'least, likely and most must go up'))
  if (new Set(stage.countersigns).size < stage.countersigns.length)
    wrong.push(bad('countersigns', 'named twice'))
  const parties = [stage.party, ...stage.countersigns]
  if (stage.handoverTo !== null) parties.push(stage.handoverTo)
  if (stage.handoverTo === stage.party)
    wrong.push(bad('handoverTo', 'the party that does the work has it already'))
  return [...wrong, ...partiesLeft(record, [...new Set(parties)])]
}
