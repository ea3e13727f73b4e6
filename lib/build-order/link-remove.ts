import * as z from 'zod/mini'
import { managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { LinkId } from '../record/ids.ts'
import { Text } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { notPlanned } from './set-up.ts'

/** Takes a link away, with a reason. Refuses once the stage that waited has begun: its start relied on it. */
export const linkRemove = defineCommand({
  name: 'link.remove',
  input: z.object({ link: LinkId, reason: Text }),
  may(actor, record, input) {
    must(record.links, input.link)
    return managesLead(actor, record)
  },
  decide(record, input, ctx) {
    const link = must(record.links, input.link)
    if (link.removedAt !== null) return refusal(wrongState(link.id, 'removed', 'drawn'))
    const late = notPlanned(must(record.stages, link.to))
    return late.length > 0 ? refusal(...late) : changes({ ...link, removedAt: ctx.happenedAt })
  },
})
