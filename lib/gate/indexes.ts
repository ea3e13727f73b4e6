import type { MetalReading } from '../record/entities/evidence.ts'
import type { Handover, Part, PartPromise, Slot } from '../record/entities/things.ts'
import type { Ask, Check, Concession, Hold, Link, SignOff, Stage } from '../record/entities/work.ts'
import type { AssemblyId } from '../record/ids.ts'
import { indexBy } from '../record/table.ts'

/** Every assembly that a stage works on: its own, what it fits or takes off, and what it fits them to. */
export function worksOn(stage: Stage): readonly AssemblyId[] {
  if (stage.host === null && stage.fits.length === 0 && stage.removes.length === 0)
    return stage.assemblies
  const host = stage.host === null ? [] : [stage.host]
  return [...new Set([...stage.assemblies, ...host, ...stage.fits, ...stage.removes])]
}

const open = <T>(row: { readonly removedAt: unknown }, keys: readonly T[]): readonly T[] =>
  row.removedAt === null ? keys : []

/** Links by the stage that waits. */
export const linksTo = indexBy<Link>((link) => open(link, [link.to]))
/** Links by the stage that is waited for. */
export const linksFrom = indexBy<Link>((link) => open(link, [link.from]))
/** Hold and witness points that were not removed, by their stage. */
export const holdsOf = indexBy<Hold>((hold) => open(hold, [hold.stage]))
/** Checks by their stage. */
export const checksOf = indexBy<Check>((check) => open(check, [check.stage]))
/** Signatures that stand, by their stage. */
export const signOffsOf = indexBy<SignOff>((sign) =>
  sign.withdrawnAt === null ? [sign.stage] : [],
)
/** Concessions that stand, by their stage. */
export const concessionsOf = indexBy<Concession>((concession) =>
  concession.withdrawnAt === null ? [concession.stage] : [],
)
/** Parts by the stages that need them. */
export const partsOf = indexBy<Part>((part) => (part.withdrawnAt === null ? part.stages : []))
/** Every promise for a part, in the order they were made. */
export const promisesOf = indexBy<PartPromise>((promise) => [promise.part])
/** Slots asked or agreed, by assembly. */
export const slotsOf = indexBy<Slot>((slot) => (slot.state === 'released' ? [] : [slot.assembly]))
/** Slots asked or agreed, by the stage they were claimed for. */
export const slotsForStage = indexBy<Slot>((slot) =>
  slot.state === 'released' || slot.stage === null ? [] : [slot.stage],
)
/** Agreed slots by bay. */
export const agreedSlotsIn = indexBy<Slot>((slot) => (slot.state === 'agreed' ? [slot.bay] : []))
/** Handovers that are under way, by assembly. */
export const openHandoversOf = indexBy<Handover>((handover) =>
  handover.state === 'prepared' || handover.state === 'released' ? handover.assemblies : [],
)
/** Stages by the assemblies they work on. */
export const stagesOn = indexBy<Stage>((stage) => open(stage, worksOn(stage)))
/** Stages in work by the assemblies they work on. */
export const stagesInWorkOn = indexBy<Stage>((stage) =>
  stage.state === 'in work' ? open(stage, worksOn(stage)) : [],
)
/** Stages by what they fit. */
export const stagesFitting = indexBy<Stage>((stage) => open(stage, stage.fits))
/** Stages by what they take off. */
export const stagesTakingOff = indexBy<Stage>((stage) => open(stage, stage.removes))
/** Stages by the party that does them. */
export const stagesOfParty = indexBy<Stage>((stage) => open(stage, [stage.party]))
/** Asks that aren't closed, by the stage they were made for. */
export const asksOf = indexBy<Ask>((ask) => (ask.closedAt === null ? [ask.stage] : []))
/** Readings of the metal's temperature by the stage whose coat cures. */
export const metalReadingsOf = indexBy<MetalReading>((reading) => [reading.stage])
