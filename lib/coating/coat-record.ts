import * as z from 'zod/mini'
import { actsForOrTold } from '../record/actor.ts'
import { changes, defineCommand, refusal, toldBy } from '../record/command.ts'
import { wrongInput, wrongState } from '../record/condition.ts'
import { type Coat, CoatKind } from '../record/entities/coating.ts'
import { AssemblyId, PartyId, StageId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { must } from '../record/table.ts'
import { coatAmiss } from './coat-amiss.ts'
import { coatFields } from './coat-fields.ts'

/** Who answers for what is laid on an assembly: the party of the stage, else who has custody. */
const layerOf = (
  record: ProjectRecord,
  asked: { readonly assembly: AssemblyId; readonly stage?: StageId | undefined },
): PartyId =>
  asked.stage === undefined
    ? must(record.assemblies, asked.assembly).custodian
    : must(record.stages, asked.stage).party

/**
 * Records a coat that was laid on an assembly, with the end of its last coat: windows count from then. It may be entered late, and it stands
 * also where it should not have gone on: the gate judges what may be laid next, and a fact is never refused.
 * Refuses a stage that hasn't begun or doesn't work on the assembly, and times that can't be so.
 */
export const coatRecord = defineCommand({
  name: 'coat.record',
  input: z.strictObject({
    assembly: AssemblyId,
    stage: z.optional(StageId),
    product: CoatKind,
    ...coatFields,
    told: z.optional(PartyId),
  }),
  may: (actor, record, input) => actsForOrTold(actor, record, layerOf(record, input), input.told),
  decide(record, input, ctx) {
    must(record.assemblies, input.assembly)
    const stage = input.stage === undefined ? null : must(record.stages, input.stage)
    if (stage !== null) {
      if (stage.removedAt !== null || stage.state === 'planned' || stage.state === 'reopened')
        return refusal(
          wrongState(
            stage.id,
            stage.removedAt === null ? stage.state : 'removed',
            'in work',
            'ended',
            'signed off',
          ),
        )
      if (!stage.assemblies.includes(input.assembly))
        return refusal(wrongInput(stage.id, 'assembly', 'this stage does not work on it'))
    }
    const coat: Coat = {
      kind: 'coat',
      id: ctx.newId('cot'),
      project: record.id,
      assembly: input.assembly,
      stage: stage?.id ?? null,
      party: layerOf(record, input),
      product: input.product,
      name: input.name ?? null,
      batch: input.batch ?? null,
      ratio: input.ratio ?? null,
      thinner: input.thinner ?? null,
      coats: input.coats ?? 1,
      endedAt: input.endedAt ?? stage?.endedAt ?? ctx.happenedAt,
      keyedWith: input.keyedWith ?? null,
      keyedAt: input.keyedAt ?? null,
      colour: input.colour ?? null,
      air: input.air ?? null,
      remark: input.remark ?? '',
      by: input.told === undefined ? ctx.actor.person : null,
      at: ctx.happenedAt,
      sandedAt: null,
      sandedTo: null,
      sandedPlace: null,
      offAt: null,
    }
    const amiss = coatAmiss(record, coat, ctx.now)
    if (amiss.length > 0) return refusal(...amiss)
    return changes(coat, ...toldBy(ctx, 'coat.record', coat.id, input.told, record.id))
  },
})
