import * as z from 'zod/mini'
import { actsForOrTold } from '../record/actor.ts'
import { changes, defineCommand, refusal, toldBy } from '../record/command.ts'
import { type Condition, wrongState } from '../record/condition.ts'
import type { Handover } from '../record/entities/things.ts'
import { HandoverId, PartyId } from '../record/ids.ts'
import { OptionalText, Sha256 } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { countOf } from './count-of.ts'
import { withFitted } from './fitted.ts'
import { movingConditions } from './moving-conditions.ts'

/** Whoever it was prepared for has left meanwhile: it is taken back, and goes to somebody else. */
const nobodyThere = (handover: Handover): Condition => ({
  ...wrongState(handover.to, 'left', 'in the project'),
  clearedBy: [handover.from],
  clearedWith: { command: 'handover.takeBack', input: { handover: handover.id } },
})

/**
 * Releases a prepared handover: from now on it is coming to the other party; custody stays until it is received.
 * What is fitted to the assemblies goes along and is named. Refuses while one of them is fitted to something that stays,
 * is in work, or is in other hands, and where the other party has left.
 */
export const handoverRelease = defineCommand({
  name: 'handover.release',
  input: z.strictObject({
    handover: HandoverId,
    condition: z.optional(OptionalText),
    care: z.optional(OptionalText),
    pieces: z.optional(z.int().check(z.minimum(1))),
    files: z.optional(z.array(Sha256)),
    told: z.optional(PartyId),
  }),
  files: (input) => input.files ?? [],
  may: (actor, record, input) =>
    actsForOrTold(actor, record, must(record.handovers, input.handover).from, input.told),
  decide(record, input, ctx) {
    const handover = must(record.handovers, input.handover)
    if (handover.state !== 'prepared')
      return refusal(wrongState(handover.id, handover.state, 'prepared'))
    if (must(record.parties, handover.to).leftAt !== null) return refusal(nobodyThere(handover))
    const unmet = movingConditions(record, handover.assemblies, handover.from)
    if (unmet.length > 0) return refusal(...unmet)
    return changes(
      {
        ...handover,
        assemblies: [...withFitted(record, handover.assemblies)],
        state: 'released',
        condition: input.condition ?? handover.condition,
        care: input.care ?? handover.care,
        pieces: input.pieces ?? handover.pieces ?? countOf(record, handover.assemblies),
        files: [...new Set([...handover.files, ...(input.files ?? [])])],
        releasedAt: ctx.happenedAt,
        releasedBy: ctx.actor.person,
      },
      ...toldBy(ctx, 'handover.release', handover.id, input.told, record.id),
    )
  },
})
