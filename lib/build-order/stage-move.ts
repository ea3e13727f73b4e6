import * as z from 'zod/mini'
import { managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { type Condition, plain, wrongState } from '../record/condition.ts'
import type { Link } from '../record/entities/work.ts'
import { StageId } from '../record/ids.ts'
import { all, must } from '../record/table.ts'
import { badInput } from './bad-input.ts'
import { circlesAmong } from './circles.ts'
import { drawnLink } from './link-draw.ts'
import { handedOn } from './links-handed-on.ts'
import { notPlanned } from './set-up.ts'

/**
 * Takes a planned stage out of where it stands and puts it after some stages and before others. What it stood between is linked as if it had
 * been removed; lags of its old links aren't taken along, for they belong to what it stood between. Refuses where something that
 * would wait for it has begun, and a circle.
 */
export const stageMove = defineCommand({
  name: 'stage.move',
  input: z.strictObject({
    stage: StageId,
    after: z.array(StageId).check(z.maxLength(50)),
    before: z.array(StageId).check(z.maxLength(50)),
  }),
  may(actor, record, input) {
    must(record.stages, input.stage)
    return managesLead(actor, record)
  },
  decide(record, input, ctx) {
    const stage = must(record.stages, input.stage)
    const after = [...new Set(input.after)].map((id) => must(record.stages, id))
    const before = [...new Set(input.before)].map((id) => must(record.stages, id))
    const wrong: Condition[] = [...notPlanned(stage), ...before.flatMap(notPlanned)]
    if (after.length === 0 && before.length === 0)
      wrong.push(badInput(stage.id, 'after', 'say after what or before what'))
    for (const one of after)
      if (one.removedAt !== null) wrong.push(wrongState(one.id, 'removed', 'planned'))
    if ([...after, ...before].some(({ id }) => id === stage.id))
      wrong.push(badInput(stage.id, 'after', 'a stage can’t wait for itself'))

    const links = all(record.links).filter((link) => link.removedAt === null)
    const own = links.filter((link) => link.from === stage.id || link.to === stage.id)
    const closed = handedOn(links, stage.id, ctx.newId)
    const none = { leastLagHours: 0, greatestLagHours: null }
    const drawn = [
      ...after.map(({ id }) => ({ from: id, to: stage.id, ...none })),
      ...before.map(({ id }) => ({ from: stage.id, to: id, ...none })),
    ].map((ends) => keptLag(own, drawnLink(ctx.newId('lnk'), record.id, ends)))
    const rest = links.filter(
      (link) => !own.includes(link) && !closed.some(({ id }) => id === link.id),
    )
    for (const circle of circlesAmong([...rest, ...closed, ...drawn]))
      wrong.push({ ...plain(stage.id), rule: 'circle', stages: circle })
    if (wrong.length > 0) return refusal(...wrong)
    const gone = own.map((link): Link => ({ ...link, removedAt: ctx.happenedAt }))
    return changes(...gone, ...closed, ...drawn)
  },
})

/** A link between the same two stages as before keeps its lags: nothing about them has changed. */
function keptLag(own: readonly Link[], drawn: Link): Link {
  const same = own.find((link) => link.from === drawn.from && link.to === drawn.to)
  return same === undefined ? drawn : { ...same, id: drawn.id }
}
