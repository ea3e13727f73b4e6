import * as z from 'zod/mini'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { type Condition, wrongState } from '../record/condition.ts'
import { LinkId } from '../record/ids.ts'
import { Hours, Line } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { drawnLink } from './link-draw.ts'
import { maySetUp, notPlanned } from './set-up.ts'
import { nextNumber } from './stage-add.ts'
import { plannedStage } from './stage-fields.ts'
import { stageNameConditions } from './stage-name.ts'

/**
 * Puts a keying stage into a link whose recoat window has run out or will: after the earlier stage, before the later, by the later's party on
 * its assemblies. The same window then counts from the end of the keying. It is the later stage's party's to press, or the lead's.
 */
export const stageInsertKeying = defineCommand({
  name: 'stage.insertKeying',
  input: z.strictObject({
    link: LinkId,
    name: z.optional(Line),
    hours: z.optional(z.nullable(Hours)),
  }),
  may: (actor, record, input) =>
    maySetUp(actor, record, must(record.stages, must(record.links, input.link).to).party),
  decide(record, input, ctx) {
    const link = must(record.links, input.link)
    const [from, to] = [must(record.stages, link.from), must(record.stages, link.to)]
    const name = input.name ?? `Key ${from.name}, for ${to.name}`.slice(0, 200)
    const wrong: Condition[] = [...notPlanned(to), ...stageNameConditions(record, name, null)]
    if (link.removedAt !== null) wrong.push(wrongState(link.id, 'removed', 'drawn'))
    if (link.greatestLagHours === null)
      wrong.push(wrongState(link.id, 'without a window', 'with a window'))
    if (wrong.length > 0) return refusal(...wrong)
    const id = ctx.newId('stg')
    const key = {
      ...plannedStage(id, record.id, nextNumber(record), name, to.party),
      group: to.group,
      assemblies: to.assemblies,
      hoursLikely: input.hours ?? null,
      keys: true,
      hazards: ['dust' as const],
      caution: 'Key as the maker’s data sheet says, and no deeper.',
    }
    const none = { leastLagHours: 0, greatestLagHours: null }
    return changes(
      key,
      { ...link, greatestLagHours: null },
      {
        ...drawnLink(ctx.newId('lnk'), record.id, { from: from.id, to: id, ...none }),
        why: 'keyed past its window',
      },
      {
        ...drawnLink(ctx.newId('lnk'), record.id, {
          ...none,
          from: id,
          to: to.id,
          greatestLagHours: link.greatestLagHours,
        }),
        why: 'the window counts from the keying',
      },
    )
  },
})
