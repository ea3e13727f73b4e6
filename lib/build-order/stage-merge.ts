import * as z from 'zod/mini'
import { checksOf, holdsOf, partsOf, slotsForStage } from '../gate/indexes.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { type Condition, plain, wrongState } from '../record/condition.ts'
import type { Step } from '../record/entities/evidence.ts'
import type { Part } from '../record/entities/things.ts'
import type { Check, Hold, Link, Stage } from '../record/entities/work.ts'
import { type AssemblyId, StageId } from '../record/ids.ts'
import { Line } from '../record/scalars.ts'
import { all, must } from '../record/table.ts'
import { badInput } from './bad-input.ts'
import { circlesAmong } from './circles.ts'
import { stricter } from './links-handed-on.ts'
import { maySetUp, notPlanned } from './set-up.ts'
import { wrongInStage } from './stage-fields.ts'
import { stageNameConditions } from './stage-name.ts'
import { stepsOf } from './steps.ts'

/**
 * Makes one stage of two planned ones of the same party: `stage` takes over what `other` does, asks and waits for, and `other` is removed.
 * What was linked to either is linked to the one that stays. Refuses where something else lies between them: that would wait for itself.
 */
export const stageMerge = defineCommand({
  name: 'stage.merge',
  input: z.strictObject({ stage: StageId, other: StageId, name: Line }),
  may: (actor, record, input) =>
    maySetUp(actor, record, must(record.stages, input.stage).party) &&
    maySetUp(actor, record, must(record.stages, input.other).party),
  decide(record, input, ctx) {
    const stage = must(record.stages, input.stage)
    const other = must(record.stages, input.other)
    const merged = mergedStage(stage, other, input.name)
    const links = all(record.links).filter((link) => link.removedAt === null)
    const { kept, gone } = linksOfOne(links, stage.id, other.id)
    const wrong: Condition[] = [...notPlanned(stage), ...notPlanned(other)]
    if (stage.id === other.id) wrong.push(badInput(stage.id, 'other', 'named twice'))
    if (stage.party !== other.party)
      wrong.push(badInput(other.id, 'other', 'the work of another party'))
    if (merged.changeOrder !== other.changeOrder && other.changeOrder !== null)
      wrong.push(badInput(other.id, 'other', 'brought by another change order'))
    if (stageNameConditions(record, input.name, stage.id).some(({ entity }) => entity !== other.id))
      wrong.push(...stageNameConditions(record, input.name, stage.id))
    for (const slot of slotsForStage(record.slots, other.id))
      wrong.push({
        ...wrongState(slot.id, slot.state, 'released'),
        clearedBy: [slot.party],
        clearedWith: { command: 'slot.release', input: { slot: slot.id } },
      })
    wrong.push(...wrongInStage(record, merged))
    const untouched = links.filter(
      (link) => !gone.includes(link) && !kept.some(({ id }) => id === link.id),
    )
    for (const circle of circlesAmong([...untouched, ...kept]))
      wrong.push({ ...plain(stage.id), rule: 'circle', stages: circle })
    if (wrong.length > 0) return refusal(...wrong)

    const last = Math.max(0, ...checksOf(record.checks, stage.id).map(({ position }) => position))
    const lastStep = stepsOf(record, stage.id).at(-1)?.position ?? 0
    return changes(
      merged,
      { ...other, removedAt: ctx.happenedAt },
      ...kept,
      ...gone.map((link): Link => ({ ...link, removedAt: ctx.happenedAt })),
      ...checksOf(record.checks, other.id).map(
        (check): Check => ({ ...check, stage: stage.id, position: last + check.position }),
      ),
      ...stepsOf(record, other.id).map(
        (step): Step => ({ ...step, stage: stage.id, position: lastStep + step.position }),
      ),
      ...holdsOf(record.holds, other.id).map((hold): Hold => ({ ...hold, stage: stage.id })),
      ...partsOf(record.parts, other.id).map(
        (part): Part => ({
          ...part,
          stages: [...new Set(part.stages.map((id) => (id === other.id ? stage.id : id)))],
        }),
      ),
    )
  },
})

/** The links of two stages as those of one: doubled ones are one that asks all that either asked. */
function linksOfOne(
  links: readonly Link[],
  stage: Stage['id'],
  other: Stage['id'],
): { readonly kept: readonly Link[]; readonly gone: readonly Link[] } {
  const kept = new Map<string, Link>()
  const gone: Link[] = []
  for (const link of links) {
    if (![link.from, link.to].some((end) => end === stage || end === other)) continue
    const from = link.from === other ? stage : link.from
    const to = link.to === other ? stage : link.to
    const same = kept.get(`${from} ${to}`)
    if (from === to) gone.push(link)
    else if (same === undefined) kept.set(`${from} ${to}`, { ...link, from, to })
    else {
      kept.set(`${from} ${to}`, stricter(same, link))
      gone.push(link)
    }
  }
  return { kept: [...kept.values()], gone }
}

const both = <T>(a: readonly T[], b: readonly T[]): T[] => [...new Set([...a, ...b])]

const sum = (a: number | null, b: number | null): number | null =>
  a === null ? b : b === null ? a : a + b

/** The stricter of two limits, where null is none. */
const lower = (a: number | null, b: number | null) =>
  a === null ? b : b === null ? a : Math.min(a, b)
const higher = (a: number | null, b: number | null) =>
  a === null ? b : b === null ? a : Math.max(a, b)

/** One stage that does, needs and asks all that two did. */
function mergedStage(stage: Stage, other: Stage, name: string): Stage {
  const within = (list: readonly AssemblyId[], own: readonly AssemblyId[]) =>
    list.filter((id) => !own.includes(id))
  return {
    ...stage,
    name,
    assemblies: both(stage.assemblies, other.assemblies),
    host: stage.host ?? other.host,
    fits: both(stage.fits, other.fits),
    removes: both(stage.removes, other.removes),
    // What one of them brings about itself is no condition of its own start.
    needsFitted: both(stage.needsFitted, within(other.needsFitted, stage.fits)),
    needsOff: both(stage.needsOff, within(other.needsOff, stage.removes)),
    needsBay: stage.needsBay || other.needsBay,
    exclusive: stage.exclusive || other.exclusive,
    hoursLeast: sum(stage.hoursLeast, other.hoursLeast),
    hoursLikely: sum(stage.hoursLikely, other.hoursLikely),
    hoursMost: sum(stage.hoursMost, other.hoursMost),
    safety: stage.safety || other.safety,
    caution: [stage.caution, other.caution].filter((text) => text !== null).join(' ') || null,
    hazards: both(stage.hazards, other.hazards),
    airAgeMost: lower(stage.airAgeMost, other.airAgeMost),
    dewMarginLeast: higher(stage.dewMarginLeast, other.dewMarginLeast),
    humidityMost: lower(stage.humidityMost, other.humidityMost),
    surfaceLeast: higher(stage.surfaceLeast, other.surfaceLeast),
    surfaceMost: lower(stage.surfaceMost, other.surfaceMost),
    inDate: both(stage.inDate, other.inDate),
    lays: stage.lays ?? other.lays,
    keys: stage.keys || other.keys,
    people: Math.max(stage.people, other.people),
    changeOrder: stage.changeOrder ?? other.changeOrder,
    decision: stage.decision ?? other.decision,
    handoverTo: other.handoverTo ?? stage.handoverTo,
    countersigns: both(stage.countersigns, other.countersigns),
  }
}
