import * as z from 'zod/mini'
import {
  ChangeLineId,
  ChangeOrderId,
  DecisionId,
  DecisionOptionId,
  EstimateLineId,
  PartyId,
  PersonId,
  ProjectId,
} from '../ids.ts'
import { CivilDate, Instant, Line, Minor, OptionalText, Sha256, TaxRate, Text } from '../scalars.ts'

/** One line of a shop's first price; an allowance is a placeholder for what is not yet known. `net` is before tax. */
export const EstimateLine = z.object({
  kind: z.literal('estimateLine'),
  id: EstimateLineId,
  project: ProjectId,
  party: PartyId,
  position: z.int(),
  text: Line,
  type: z.enum(['fixed', 'allowance']),
  net: Minor,
  taxRate: TaxRate,
  withdrawnAt: z.nullable(Instant),
})
export type EstimateLine = Readonly<z.infer<typeof EstimateLine>>

/**
 * Extra (or less) work or price. Once approved it never changes.
 * `shown` is exactly what the approver saw (canonical JSON) and `shownHash` its SHA-256; `proof` how they proved who they are.
 */
export const ChangeOrder = z.object({
  kind: z.literal('changeOrder'),
  id: ChangeOrderId,
  project: ProjectId,
  number: z.int().check(z.minimum(1)),
  title: Line,
  text: OptionalText,
  reason: z.enum(['found', 'asked for', 'mistake', 'law']),
  party: PartyId,
  bears: z.enum(['owner', 'shop', 'insurer', 'disputed']),
  state: z.enum(['draft', 'sent', 'approved', 'declined', 'withdrawn']),
  /** Working days that the shop expects it to add; null where it has not said. */
  days: z.nullable(z.int()),
  files: z.array(Sha256),
  raisedAt: Instant,
  raisedBy: PersonId,
  sentAt: z.nullable(Instant),
  answeredAt: z.nullable(Instant),
  answeredBy: z.nullable(PersonId),
  proof: z.nullable(z.enum(['password', 'mailed code', 'demonstration', 'standing consent'])),
  shown: z.nullable(z.string()),
  shownHash: z.nullable(z.string()),
  answer: z.nullable(OptionalText),
})
export type ChangeOrder = Readonly<z.infer<typeof ChangeOrder>>

/** One line of a change order; `net` before tax, minus for what falls away. `quantity` and `unitPrice` explain it. */
export const ChangeLine = z.object({
  kind: z.literal('changeLine'),
  id: ChangeLineId,
  project: ProjectId,
  changeOrder: ChangeOrderId,
  party: PartyId,
  position: z.int(),
  text: Line,
  quantity: z.nullable(z.number()),
  unit: z.nullable(Line),
  unitPrice: z.nullable(Minor),
  net: Minor,
  taxRate: TaxRate,
  /** When its order was sent; until then it is for the shop's managers alone. */
  sentAt: z.nullable(Instant),
  removedAt: z.nullable(Instant),
})
export type ChangeLine = Readonly<z.infer<typeof ChangeLine>>

/** A choice that `chooser` must make. */
export const Decision = z.object({
  kind: z.literal('decision'),
  id: DecisionId,
  project: ProjectId,
  question: Line,
  text: OptionalText,
  party: PartyId,
  chooser: PartyId,
  decideBy: z.nullable(CivilDate),
  state: z.enum(['asked', 'chosen', 'withdrawn']),
  askedAt: Instant,
  chosen: z.nullable(DecisionOptionId),
  chosenAt: z.nullable(Instant),
  chosenBy: z.nullable(PersonId),
  reason: z.nullable(Text),
})
export type Decision = Readonly<z.infer<typeof Decision>>

/** One way to choose; its party and chooser are its decision’s. */
export const DecisionOption = z.object({
  kind: z.literal('decisionOption'),
  id: DecisionOptionId,
  project: ProjectId,
  decision: DecisionId,
  party: PartyId,
  chooser: PartyId,
  position: z.int(),
  text: Line,
  /** What it adds to the bill, before tax; null where nothing was said. */
  net: z.nullable(Minor),
})
export type DecisionOption = Readonly<z.infer<typeof DecisionOption>>
