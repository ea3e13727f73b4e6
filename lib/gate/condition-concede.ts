import * as z from 'zod/mini'
import { managesFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { plain, wrongInput, wrongState } from '../record/condition.ts'
import type { Concession } from '../record/entities/work.ts'
import { EntityId, StageId } from '../record/ids.ts'
import { Line, Sha256, Text } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { concessionOn } from './concessions.ts'
import { unmetAbout } from './unmet-now.ts'
import { needsSheet, whoConcedes } from './who-concedes.ts'

/**
 * Accepts an unmet condition of a stage, with a reason that stays visible. It counts once the stage's party and the lead have
 * both agreed. Refuses what is met, what can't be conceded (safety work, custody, a hold point, a missing yes), and a second yes.
 */
export const conditionConcede = defineCommand({
  name: 'condition.concede',
  input: z.strictObject({
    stage: StageId,
    rule: Line,
    entity: EntityId,
    reason: Text,
    file: z.optional(Sha256),
  }),
  files: ({ file }) => (file === undefined ? [] : [file]),
  may: (actor, record, input) =>
    whoConcedes(record, must(record.stages, input.stage), input).some((party) =>
      managesFor(actor, party),
    ),
  decide(record, input, ctx) {
    const stage = must(record.stages, input.stage)
    const { party, person } = ctx.actor
    if (party === null) return refusal(wrongInput(stage.id, 'party', 'a party of this project'))
    const { rule, entity, reason } = input
    const known = concessionOn(record, stage, rule, entity)
    if (known?.parties.includes(party) === true)
      return refusal({ ...plain(known.id), rule: 'exists', field: 'rule', since: known.at })
    const [condition] = unmetAbout(record, stage, input, ctx.happenedAt)
    if (condition === undefined) return refusal(wrongState(entity, 'met', 'not met'))
    if (!condition.concedable) return refusal(condition)
    const file = input.file ?? known?.file ?? null
    if (needsSheet(condition.rule) && file === null)
      return refusal(wrongInput(entity, 'file', 'the maker’s data sheet is needed'))
    if (known !== undefined)
      return changes({
        ...known,
        file,
        needs: whoConcedes(record, stage, input),
        parties: [...known.parties, party],
        reason: both(known.reason, reason),
      })
    const concession: Concession = {
      kind: 'concession',
      id: ctx.newId('con'),
      project: record.id,
      stage: stage.id,
      rule,
      entity,
      reason,
      file,
      needs: whoConcedes(record, stage, input),
      parties: [party],
      person,
      at: ctx.happenedAt,
      withdrawnAt: null,
    }
    return changes(concession)
  },
})

const MOST_LETTERS = 8000
/** Both reasons, where they differ and there is room; the journal has each with its person. */
function both(first: string, second: string): string {
  const joined = first === second ? first : `${first}\n${second}`
  return joined.length <= MOST_LETTERS ? joined : first
}
