import * as z from 'zod/mini'
import { actsForOrTold } from '../record/actor.ts'
import { changes, defineCommand, refusal, toldBy } from '../record/command.ts'
import { plain, wrongInput } from '../record/condition.ts'
import { type Film, GaugeMethod } from '../record/entities/coating.ts'
import { AssemblyId, PartyId, StageId } from '../record/ids.ts'
import { Instant, Line } from '../record/scalars.ts'
import { must } from '../record/table.ts'

/** What each method can read a film on (FACTS B13). */
const metalOf: { readonly [M in GaugeMethod]: Film['metal'] } = {
  magnetic: 'steel',
  'eddy current': 'aluminium',
}

/** More than any car's film; a figure beyond it was typed in another unit. */
const MOST_MICRONS = 20_000

/**
 * Records film readings of an assembly, several panels and points at once, in µm. Refuses a gauge that doesn't read on that metal. A reading with a
 * gauge that wasn't set to nought that day on the same metal is kept and proves nothing.
 */
export const filmRecord = defineCommand({
  name: 'film.record',
  input: z.strictObject({
    assembly: AssemblyId,
    stage: z.optional(StageId),
    metal: z.enum(['steel', 'aluminium']),
    method: GaugeMethod,
    gauge: z.optional(z.nullable(Line)),
    zeroed: z.boolean(),
    at: z.optional(Instant),
    readings: z
      .array(
        z.strictObject({
          panel: Line,
          point: Line,
          microns: z.number().check(z.minimum(0), z.maximum(MOST_MICRONS)),
        }),
      )
      .check(z.minLength(1), z.maxLength(200)),
    told: z.optional(PartyId),
  }),
  may(actor, record, input) {
    const party =
      input.stage === undefined
        ? must(record.assemblies, input.assembly).custodian
        : must(record.stages, input.stage).party
    return actsForOrTold(actor, record, party, input.told)
  },
  decide(record, input, ctx) {
    must(record.assemblies, input.assembly)
    if (metalOf[input.method] !== input.metal)
      return refusal(
        wrongInput(
          input.assembly,
          'method',
          input.method === 'magnetic'
            ? 'a magnetic gauge does not read on aluminium; take an eddy-current one'
            : 'an eddy-current gauge does not read on steel; take a magnetic one',
        ),
      )
    const at = input.at ?? ctx.happenedAt
    if (at > ctx.now)
      return refusal({
        ...plain(input.assembly),
        rule: 'time',
        field: 'at',
        why: 'in the future',
        limit: ctx.now,
      })
    const films = input.readings.map(
      (reading): Film => ({
        kind: 'film',
        id: ctx.newId('flm'),
        project: record.id,
        assembly: input.assembly,
        stage: input.stage ?? null,
        ...reading,
        metal: input.metal,
        method: input.method,
        zeroed: input.zeroed,
        gauge: input.gauge ?? null,
        at,
        by: input.told === undefined ? ctx.actor.person : null,
      }),
    )
    return changes(...films, ...toldBy(ctx, 'film.record', input.assembly, input.told, record.id))
  },
})
