import * as z from 'zod/mini'
import { managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import type { Link } from '../record/entities/work.ts'
import { LinkId } from '../record/ids.ts'
import { Hours, Line } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { badInput } from './bad-input.ts'
import { notPlanned } from './set-up.ts'
import { or } from './stage-fields.ts'

/**
 * Changes what is said of a link: its lags, why it is there, whether safety hangs on it, and the metal temperature in °C for which its cure
 * is given. Refuses once the stage that waits has begun: its start relied on it.
 */
export const linkDescribe = defineCommand({
  name: 'link.describe',
  input: z.strictObject({
    link: LinkId,
    leastLagHours: z.optional(Hours),
    greatestLagHours: z.optional(z.nullable(Hours)),
    why: z.optional(z.nullable(Line)),
    safety: z.optional(z.boolean()),
    curesAt: z.optional(z.nullable(z.number().check(z.minimum(10), z.maximum(60)))),
  }),
  may(actor, record, input) {
    must(record.links, input.link)
    return managesLead(actor, record)
  },
  decide(record, input) {
    const link = must(record.links, input.link)
    if (link.removedAt !== null) return refusal(wrongState(link.id, 'removed', 'drawn'))
    const described: Link = {
      ...link,
      leastLagHours: input.leastLagHours ?? link.leastLagHours,
      greatestLagHours: or(input.greatestLagHours, link.greatestLagHours),
      why: or(input.why, link.why),
      safety: input.safety ?? link.safety,
      curesAt: or(input.curesAt, link.curesAt),
    }
    const { leastLagHours, greatestLagHours } = described
    const wrong = notPlanned(must(record.stages, link.to))
    if (greatestLagHours !== null && greatestLagHours < leastLagHours)
      wrong.push(badInput(link.id, 'greatestLagHours', 'the greatest lag is less than the least'))
    return wrong.length > 0 ? refusal(...wrong) : changes(described)
  },
})
