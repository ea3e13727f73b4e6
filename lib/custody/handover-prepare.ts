import * as z from 'zod/mini'
import { actsForOrTold } from '../record/actor.ts'
import { changes, defineCommand, refusal, toldBy } from '../record/command.ts'
import { type Condition, plain, wrongInput, wrongState } from '../record/condition.ts'
import type { Handover } from '../record/entities/things.ts'
import { AssemblyId, PartyId, StageId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { OptionalText, Sha256 } from '../record/scalars.ts'
import { all, must } from '../record/table.ts'
import { notInCustody } from './moving-conditions.ts'
import { newHandover } from './new-handover.ts'

const input = z.strictObject({
  assemblies: z
    .array(AssemblyId)
    .check(z.minLength(1), z.maxLength(200))
    .check(z.refine((ids) => new Set(ids).size === ids.length, 'each assembly once')),
  to: PartyId,
  stage: z.optional(StageId),
  condition: z.optional(OptionalText),
  care: z.optional(OptionalText),
  pieces: z.optional(z.int().check(z.minimum(1))),
  files: z.optional(z.array(Sha256)),
  told: z.optional(PartyId),
})

/** Who answers for the first of them, and so for all of them if they may go together. */
const releaser = (record: ProjectRecord, assemblies: readonly AssemblyId[]): PartyId | undefined =>
  assemblies.map((id) => must(record.assemblies, id).custodian)[0]

const isOpen = (handover: Handover): boolean =>
  handover.state === 'prepared' || handover.state === 'released'

/** The condition that a handover of one of them is under way already. */
function underWay(handover: Handover): Condition {
  const prepared = handover.state === 'prepared'
  return {
    ...plain(handover.id),
    rule: 'exists',
    field: 'assemblies',
    since: handover.releasedAt ?? handover.preparedAt,
    clearedBy: [prepared ? handover.from : handover.to],
    clearedWith: {
      command: prepared ? 'handover.release' : 'handover.receive',
      input: { handover: handover.id },
    },
  }
}

/**
 * Makes a handover ready: what goes, to whom, in what condition and how to care for it. The custodian prepares it.
 * Refuses what is in several hands, or in another open handover.
 */
export const handoverPrepare = defineCommand({
  name: 'handover.prepare',
  input,
  files: (input) => input.files ?? [],
  may(actor, record, { assemblies, told }) {
    const from = releaser(record, assemblies)
    return from !== undefined && actsForOrTold(actor, record, from, told)
  },
  decide(record, input, ctx) {
    const { assemblies, to } = input
    const from = releaser(record, assemblies)
    if (from === undefined) return refusal(wrongInput(record.id, 'assemblies', 'name an assembly'))
    const taker = must(record.parties, to)
    if (taker.leftAt !== null) return refusal(wrongState(to, 'left', 'in the project'))
    if (to === from || taker.role === 'observer')
      return refusal(wrongInput(to, 'to', 'somebody else who works on the car'))
    const elsewhere = assemblies
      .map((id) => must(record.assemblies, id))
      .filter((assembly) => assembly.custodian !== from)
    if (elsewhere.length > 0)
      return refusal(...elsewhere.map((assembly) => notInCustody(assembly, from)))
    const others = all(record.handovers).filter(
      (other) => isOpen(other) && other.assemblies.some((id) => assemblies.includes(id)),
    )
    if (others.length > 0) return refusal(...others.map(underWay))
    const stage = input.stage === undefined ? null : must(record.stages, input.stage).id
    const prepared = newHandover(record, { assemblies, from, to, stage }, ctx)
    const handover: Handover = {
      ...prepared,
      condition: input.condition ?? '',
      care: input.care ?? '',
      pieces: input.pieces ?? prepared.pieces,
      files: input.files ?? [],
    }
    return changes(handover, ...toldBy(ctx, 'handover.prepare', handover.id, input.told, record.id))
  },
})
