import * as z from 'zod/mini'
import { managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { type Condition, plain, wrongState } from '../record/condition.ts'
import type { Hold, Link, Stage } from '../record/entities/work.ts'
import { type HoldId, PartyId, PersonId, type ProjectId, StageId } from '../record/ids.ts'
import { type Instant, Line } from '../record/scalars.ts'
import { all, must } from '../record/table.ts'
import { badInput } from './bad-input.ts'
import { notOpen } from './hold-state.ts'
import { bookOf, notOfParty } from './named-person.ts'
import { partiesLeft } from './set-up.ts'

/** Working days of notice where nothing else is agreed: common practice, no source. */
const USUAL_NOTICE_DAYS = 2

/** A hold or witness point that nobody has cleared yet. */
export const setHold = (
  id: HoldId,
  project: ProjectId,
  asked: Pick<Hold, 'stage' | 'point' | 'name' | 'party' | 'person'>,
  setAt: Instant,
): Hold => ({
  kind: 'hold',
  id,
  project,
  stage: asked.stage,
  point: asked.point,
  name: asked.name,
  party: asked.party,
  person: asked.person,
  state: 'set',
  setAt,
  invitedAt: null,
  visitAt: null,
  noticeDays: USUAL_NOTICE_DAYS,
  clearedAt: null,
  clearedBy: null,
  remark: null,
  removedAt: null,
})

/** A window so short is that of bare metal (FACTS B1: the same shift; a working day at most). */
const BARE_HOURS = 24

/** Bare metal is photographed and coated, and seen afterwards: a point between the two would let it rust. */
const waitsBare = (stage: Stage, next: Stage, link: Link): boolean =>
  stage.lays === null &&
  !stage.keys &&
  next.lays !== null &&
  link.greatestLagHours !== null &&
  link.greatestLagHours <= BARE_HOURS

/**
 * Sets a hold or witness point after a stage: what follows waits until the party (or the person of it) clears it.
 * Refuses once something that follows has begun, a point that is set already, and one that bare metal would have to wait for.
 */
export const holdSet = defineCommand({
  name: 'hold.set',
  input: z.object({
    stage: StageId,
    point: z.enum(['hold', 'witness']),
    name: Line,
    party: PartyId,
    person: z.optional(z.nullable(PersonId)),
    noticeDays: z.optional(z.int().check(z.minimum(0), z.maximum(60))),
  }),
  may(actor, record, input) {
    must(record.stages, input.stage)
    return managesLead(actor, record)
  },
  shops: (record, input) =>
    (input.person ?? null) === null ? [] : bookOf(record.parties.rows.get(input.party)),
  decide(record, input, ctx) {
    const stage = must(record.stages, input.stage)
    const party = must(record.parties, input.party)
    const person = input.person ?? null
    const wrong: Condition[] = [...partiesLeft(record, [party.id])]
    if (stage.removedAt !== null) wrong.push(wrongState(stage.id, 'removed', 'planned'))
    if (person !== null) wrong.push(...notOfParty(record, party, person, stage.id, ctx))
    for (const link of all(record.links)) {
      if (link.from !== stage.id || link.removedAt !== null) continue
      const next = must(record.stages, link.to)
      if (next.state !== 'planned') wrong.push(wrongState(next.id, next.state, 'planned'))
      if (waitsBare(stage, next, link))
        wrong.push(
          badInput(next.id, 'stage', 'bare steel waits for no visit: set it after the coat'),
        )
    }
    const same = all(record.holds).find(
      (hold) =>
        hold.stage === stage.id &&
        hold.point === input.point &&
        hold.party === party.id &&
        hold.person === person &&
        notOpen(hold) === null,
    )
    if (same !== undefined) wrong.push({ ...plain(same.id), rule: 'exists', field: 'party' })
    if (wrong.length > 0) return refusal(...wrong)
    const asked = {
      stage: stage.id,
      point: input.point,
      name: input.name,
      party: party.id,
      person,
    }
    const hold = setHold(ctx.newId('hld'), record.id, asked, ctx.happenedAt)
    return changes({ ...hold, noticeDays: input.noticeDays ?? hold.noticeDays })
  },
})
