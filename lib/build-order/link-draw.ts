import * as z from 'zod/mini'
import { circleThrough } from '../gate/circle.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { type Condition, plain, wrongState } from '../record/condition.ts'
import type { Link } from '../record/entities/work.ts'
import { type LinkId, type ProjectId, StageId } from '../record/ids.ts'
import { Hours } from '../record/scalars.ts'
import { all, must } from '../record/table.ts'
import { badInput } from './bad-input.ts'
import { maySetUp, notPlanned } from './set-up.ts'

/** A link of which nothing more is said than what it joins and its lags. */
export const drawnLink = (
  id: LinkId,
  project: ProjectId,
  asked: Pick<Link, 'from' | 'to' | 'leastLagHours' | 'greatestLagHours'>,
): Link => ({
  kind: 'link',
  id,
  project,
  ...asked,
  why: null,
  safety: false,
  curesAt: null,
  removedAt: null,
})

/**
 * Makes `to` wait for `from`; lags in clock hours from the recorded end of `from`'s work.
 * Refuses a circle (named), a link that is there already, one into a stage that has begun, a window shorter than the cure.
 */
export const linkDraw = defineCommand({
  name: 'link.draw',
  input: z.object({
    from: StageId,
    to: StageId,
    leastLagHours: z.optional(Hours),
    greatestLagHours: z.optional(z.nullable(Hours)),
  }),
  may: (actor, record, input) =>
    maySetUp(actor, record, must(record.stages, input.from).party) &&
    maySetUp(actor, record, must(record.stages, input.to).party),
  decide(record, input, ctx) {
    const from = must(record.stages, input.from)
    const to = must(record.stages, input.to)
    const leastLagHours = input.leastLagHours ?? 0
    const greatestLagHours = input.greatestLagHours ?? null
    const links = all(record.links).filter((link) => link.removedAt === null)
    const wrong: Condition[] = [...notPlanned(to)]
    if (from.removedAt !== null) wrong.push(wrongState(from.id, 'removed', 'planned'))
    if (greatestLagHours !== null && greatestLagHours < leastLagHours)
      wrong.push(badInput(to.id, 'greatestLagHours', 'the greatest lag is less than the least'))
    const there = links.find((link) => link.from === from.id && link.to === to.id)
    if (there !== undefined) {
      wrong.push({
        ...plain(there.id),
        rule: 'exists',
        field: 'link',
        clearedWith: { command: 'link.remove', input: { link: there.id } },
      })
    }
    const circle = circleThrough(links, from.id, to.id)
    if (circle !== null) wrong.push({ ...plain(to.id), rule: 'circle', stages: circle })
    if (wrong.length > 0) return refusal(...wrong)
    const asked = { from: from.id, to: to.id, leastLagHours, greatestLagHours }
    return changes(drawnLink(ctx.newId('lnk'), record.id, asked))
  },
})
