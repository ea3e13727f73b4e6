import * as z from 'zod/mini'
import { actsFor } from '../record/actor.ts'
import { mustAny } from '../record/any-entity.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import type { Entity } from '../record/entity.ts'
import { EntityId, type PartyId } from '../record/ids.ts'
import { Text } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { badInput } from './bad-input.ts'

/** Whose business an entity is, where not everybody may see it; null where everybody may. */
function businessOf(entity: Entity): PartyId | null {
  switch (entity.kind) {
    case 'changeOrder':
    case 'changeLine':
    case 'estimateLine':
    case 'decision':
    case 'decisionOption':
      return entity.party
    case 'note':
      return entity.business
    default:
      return null
  }
}

/**
 * Words on any entity of the project: private to the writer's party (`shop`) or shared with all who see the entity.
 * Refuses a shared answer to a private note: it would tell what the note says.
 */
export const noteWrite = defineCommand({
  name: 'note.write',
  input: z.object({
    on: EntityId,
    text: Text,
    type: z.optional(z.enum(['note', 'question', 'answer'])),
    sharing: z.enum(['shop', 'shared']),
  }),
  may: (actor) => actor.party !== null && actsFor(actor, actor.party),
  decide(record, input, ctx) {
    const on = mustAny(record, input.on)
    if (on.kind === 'note' && on.sharing === 'shop' && input.sharing === 'shared')
      return refusal(badInput(on.id, 'sharing', 'the note that it speaks of is private'))
    return changes({
      kind: 'note',
      id: ctx.newId('nte'),
      project: record.id,
      on: on.id,
      type: input.type ?? 'note',
      sharing: input.sharing,
      business: businessOf(on),
      text: input.text,
      party: must(record.parties, ctx.actor.party ?? '').id,
      person: ctx.actor.person,
      at: ctx.happenedAt,
      withdrawnAt: null,
    })
  },
})
