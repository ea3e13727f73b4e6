import * as z from 'zod/mini'
import { type Actor, actsForOrTold } from '../record/actor.ts'
import { changes, defineCommand, refusal, toldBy } from '../record/command.ts'
import { type Condition, wrongInput, wrongState } from '../record/condition.ts'
import { Handover } from '../record/entities/things.ts'
import { HandoverId, PartyId } from '../record/ids.ts'
import { Line, OptionalText, Sha256 } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { moveCustody } from './move-custody.ts'
import { movingConditions } from './moving-conditions.ts'
import { isSigned } from './signature.ts'

const Input = z.strictObject({
  handover: HandoverId,
  outcome: z.enum(['accepted', 'accepted with remarks', 'refused']),
  remarks: z.optional(OptionalText),
  /** How many pieces came, counted by the receiver. */
  pieces: z.optional(z.int().check(z.minimum(0), z.maximum(100_000))),
  files: z.optional(z.array(Sha256)),
  receivedByName: z.optional(Line),
  signature: z.optional(Handover.shape.signature),
  told: z.optional(PartyId),
})
type Input = z.infer<typeof Input>

/** A guest came by the handover's link; what they sign is all that shows who they were. */
const isGuest = (actor: Actor): boolean => actor.role === 'guest'

/** What the receiver still has to say before it can be written down. */
function missing(handover: Handover, input: Input, actor: Actor): Condition[] {
  const wrong = (field: string, why: string) => wrongInput(handover.id, field, why)
  const found: Condition[] = []
  if (input.outcome !== 'accepted' && !/\S/.test(input.remarks ?? ''))
    found.push(wrong('remarks', 'say what is wrong'))
  if (input.outcome !== 'refused' && handover.pieces !== null) {
    if (input.pieces === undefined) found.push(wrong('pieces', 'count the pieces'))
    else if (input.outcome === 'accepted' && input.pieces !== handover.pieces)
      found.push(wrong('outcome', 'the count differs: accept with remarks or refuse'))
  }
  if (isGuest(actor) && input.receivedByName === undefined)
    found.push(wrong('receivedByName', 'who receives it'))
  if (isGuest(actor) && !isSigned(input.signature ?? ''))
    found.push(wrong('signature', 'sign with a finger'))
  return found
}

const notReleased = (handover: Handover): Condition => ({
  ...wrongState(handover.id, handover.state, 'released'),
  ...(handover.state === 'prepared' && {
    clearedBy: [handover.from],
    clearedWith: { command: 'handover.release', input: { handover: handover.id } },
  }),
})

/**
 * Receives what was released: accepted, accepted with remarks, or refused. Custody moves with a yes only, and what is
 * fitted goes along. A guest by the link signs with name and finger. Refuses a count that differs and is accepted without
 * remarks, and a receipt while the things are no longer as they were released.
 */
export const handoverReceive = defineCommand({
  name: 'handover.receive',
  input: Input,
  files: (input) => input.files ?? [],
  may(actor, record, input) {
    const { to } = must(record.handovers, input.handover)
    if (isGuest(actor)) return actor.party === to && input.told === undefined
    return actsForOrTold(actor, record, to, input.told)
  },
  decide(record, input, ctx) {
    const handover = must(record.handovers, input.handover)
    if (handover.state !== 'released' || handover.releasedAt === null)
      return refusal(notReleased(handover))
    const unsaid = missing(handover, input, ctx.actor)
    if (unsaid.length > 0) return refusal(...unsaid)
    const refused = input.outcome === 'refused'
    const unmet = refused ? [] : movingConditions(record, handover.assemblies, handover.from)
    if (unmet.length > 0) return refusal(...unmet)
    // Two phones' clocks may differ by a little; what was released can't have come before it went.
    const early = ctx.happenedAt < handover.releasedAt
    const at = early ? handover.releasedAt : ctx.happenedAt
    return changes(
      {
        ...handover,
        state: refused ? 'refused' : 'received',
        receivedAt: at,
        receivedBy: isGuest(ctx.actor) ? null : ctx.actor.person,
        receivedByName: input.receivedByName ?? null,
        signature: input.signature ?? null,
        receivedPieces: input.pieces ?? null,
        outcome: input.outcome,
        remarks: input.remarks ?? null,
        receivedFiles: input.files ?? [],
      },
      ...(refused ? [] : moveCustody(record, handover.assemblies, handover.to, at)),
      ...toldBy(ctx, 'handover.receive', handover.id, input.told, record.id),
    )
  },
})
