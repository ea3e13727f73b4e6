import * as z from 'zod/mini'
import { actsForOrTold, leadOf } from '../record/actor.ts'
import { changes, defineCommand, refusal, toldBy } from '../record/command.ts'
import { type Condition, plain, wrongInput, wrongState } from '../record/condition.ts'
import type { Party } from '../record/entities/people.ts'
import type { OpenWindow, Slot } from '../record/entities/things.ts'
import type { Stage } from '../record/entities/work.ts'
import { AssemblyId, BayId, PartyId, ShopId, StageId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { Instant } from '../record/scalars.ts'
import { all, must } from '../record/table.ts'
import { bayOf, bookOf } from './diary.ts'
import { slotTaken } from './slot-taken.ts'
import { spanConditions, within } from './span.ts'

const Input = z.strictObject({
  assembly: AssemblyId,
  bay: BayId,
  shop: ShopId,
  from: Instant,
  to: Instant,
  stage: z.optional(StageId),
  told: z.optional(PartyId),
})
type Input = z.infer<typeof Input>

const openFor = (record: ProjectRecord, assembly: AssemblyId): OpenWindow[] =>
  all(record.openWindows).filter(
    (window) => window.closedAt === null && window.assembly === assembly,
  )

/** The condition that the bay is neither the claimant's own nor offered to others. */
const notOffered = (record: ProjectRecord, bay: BayId, assembly: AssemblyId): Condition => ({
  ...wrongInput(bay, 'bay', 'a bay of your own, or one of an open window'),
  clearedBy: all(record.parties)
    .filter((party) => party.lead)
    .map((party) => party.id),
  clearedWith: { command: 'window.open', input: { assembly, bay } },
})

/** Whether a stage's hands are on that assembly: its own, what it fits or takes off, and what it fits them to. */
const worksOn = (stage: Stage, assembly: AssemblyId): boolean =>
  stage.host === assembly ||
  [...stage.assemblies, ...stage.fits, ...stage.removes].includes(assembly)

function stageConditions(stage: Stage | undefined, input: Input, party: PartyId): Condition[] {
  if (stage === undefined) return []
  if (stage.removedAt !== null) return [wrongState(stage.id, 'removed', 'planned')]
  if (stage.party !== party) return [wrongInput(stage.id, 'stage', 'a stage of the claimant')]
  if (worksOn(stage, input.assembly)) return []
  return [wrongInput(stage.id, 'assembly', 'an assembly that the stage works on')]
}

/** The condition that the hours were over before they were claimed: nobody could agree to them any more. */
const isOver = (assembly: AssemblyId): Condition => ({
  ...plain(assembly),
  rule: 'time',
  field: 'to',
  why: 'span is over',
  limit: null,
})

/** Why the claim can't even be asked for, besides the hours being taken. */
function claimConditions(
  record: ProjectRecord,
  input: Input,
  party: Party,
  at: Instant,
): Condition[] {
  const stage = input.stage === undefined ? undefined : must(record.stages, input.stage)
  const offered =
    party.shop === input.shop ||
    openFor(record, input.assembly).some((window) => window.bay === input.bay)
  return [
    ...spanConditions(input.assembly, input),
    ...(input.to <= at ? [isOver(input.assembly)] : []),
    ...stageConditions(stage, input, party.id),
    ...(offered ? [] : [notOffered(record, input.bay, input.assembly)]),
  ]
}

/**
 * Claims a slot: a span for one assembly in one bay. Inside an open window, or where the lead claims its own bay, it is
 * agreed at once; else it is asked of the lead. Refuses hours that are over, and those in which the bay or the assembly has an agreed slot.
 */
export const slotClaim = defineCommand({
  name: 'slot.claim',
  input: Input,
  shops: (_record, input) => [input.shop],
  may(actor, record, { told }) {
    const claimant = told ?? actor.party
    if (claimant === null || must(record.parties, claimant).role !== 'shop') return false
    return actsForOrTold(actor, record, claimant, told)
  },
  decide(record, input, ctx) {
    const claimant = input.told ?? ctx.actor.party
    if (claimant === null) return refusal(wrongInput(record.id, 'told', 'for whom'))
    const party = must(record.parties, claimant)
    const assembly = must(record.assemblies, input.assembly)
    const bay = bayOf(ctx, input.shop, input.bay)
    if (bay.retiredAt !== null) return refusal(wrongState(bay.id, 'retired', 'in use'))
    const unmet = claimConditions(record, input, party, ctx.happenedAt)
    if (unmet.length > 0) return refusal(...unmet)
    const taken = slotTaken(record, bookOf(ctx, input.shop), input)
    if (taken.length > 0) return refusal(...taken)
    const window = openFor(record, assembly.id).find(
      (open) => within(input, open) && (open.bay === null || open.bay === bay.id),
    )
    const lead = leadOf(record)
    const agreed = lead !== undefined && (window !== undefined || party.id === lead.id)
    const slot: Slot = {
      kind: 'slot',
      id: ctx.newId('slt'),
      project: record.id,
      shop: input.shop,
      bay: bay.id,
      assembly: assembly.id,
      stage: input.stage ?? null,
      party: party.id,
      from: input.from,
      to: input.to,
      state: agreed ? 'agreed' : 'asked',
      askedAt: ctx.happenedAt,
      agreedAt: agreed ? ctx.happenedAt : null,
      agreedBy: agreed ? lead.id : null,
      window: window?.id ?? null,
      reason: null,
    }
    return changes(slot, ...toldBy(ctx, 'slot.claim', slot.id, input.told, record.id))
  },
})
