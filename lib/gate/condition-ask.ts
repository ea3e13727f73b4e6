import * as z from 'zod/mini'
import { actsFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { plain, wrongInput, wrongState } from '../record/condition.ts'
import type { Ask } from '../record/entities/work.ts'
import { EntityId, PartyId, StageId } from '../record/ids.ts'
import { Line, OptionalText } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { asksOf } from './indexes.ts'
import { unmetAbout } from './unmet-now.ts'
import { whoConcedes } from './who-concedes.ts'

/**
 * Puts an unmet condition of a stage before a party that can clear it, or concede it. It is answered when the condition is met.
 * Refuses a condition that is met, a party that can do nothing about it, and the same ask twice.
 */
export const conditionAsk = defineCommand({
  name: 'condition.ask',
  input: z.strictObject({
    stage: StageId,
    rule: Line,
    entity: EntityId,
    to: PartyId,
    text: z.optional(OptionalText),
  }),
  may: (actor) => actor.party !== null && actsFor(actor, actor.party),
  decide(record, input, ctx) {
    const stage = must(record.stages, input.stage)
    const { rule, entity, to } = input
    const { party: from, person } = ctx.actor
    if (from === null) return refusal(wrongInput(stage.id, 'party', 'a party of this project'))
    const found = unmetAbout(record, stage, input, ctx.happenedAt)
    if (found.length === 0) return refusal(wrongState(entity, 'met', 'not met'))
    const able = found.flatMap(({ clearedBy, concedable }) =>
      concedable ? [...clearedBy, ...whoConcedes(record, stage, input)] : clearedBy,
    )
    if (!able.includes(must(record.parties, to).id) || to === from)
      return refusal({
        ...wrongInput(to, 'to', 'somebody else who can clear it'),
        clearedBy: [...new Set(able)],
      })
    const asked = asksOf(record.asks, stage.id).find(
      (ask) => ask.rule === rule && ask.entity === entity && ask.to === to && ask.from === from,
    )
    if (asked !== undefined)
      return refusal({ ...plain(asked.id), rule: 'exists', field: 'to', since: asked.at })
    const ask: Ask = {
      kind: 'ask',
      id: ctx.newId('ask'),
      project: record.id,
      stage: stage.id,
      rule,
      entity,
      from,
      to,
      text: input.text ?? '',
      person,
      at: ctx.happenedAt,
      closedAt: null,
    }
    return changes(ask)
  },
})
