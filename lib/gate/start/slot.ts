import { leadOf } from '../../record/actor.ts'
import type { Clearing } from '../../record/condition.ts'
import type { Slot } from '../../record/entities/things.ts'
import type { Stage } from '../../record/entities/work.ts'
import type { PartyId } from '../../record/ids.ts'
import type { ProjectRecord } from '../../record/project-record.ts'
import type { Instant } from '../../record/scalars.ts'
import { agreedSlotsIn, slotsForStage, slotsOf, worksOn } from '../indexes.ts'
import { type GateRule, met, unmet } from '../rule.ts'

/** Gate rule 9: where the stage needs a bay, its slot is agreed and runs now, and the bay is free. */
export const slot: GateRule = (record, stage, at) => {
  if (!stage.needsBay) return []
  const claims = claimsFor(record, stage)
  const now = claims.find((claim) => claim.state === 'agreed' && runs(claim, at))
  if (now !== undefined) {
    const overrun = stillIn(record, now, at)
    return [overrun === undefined ? met('slot', now.id) : taken(stage, now, overrun)]
  }
  const asked = claims.find((claim) => claim.state === 'asked' && claim.to > at)
  const claim = asked ?? nearest(claims, at)
  const is = asked !== undefined ? 'asked' : claim === undefined ? 'none' : 'outside'
  return [
    unmet({
      rule: 'slot',
      entity: claim?.id ?? stage.id,
      root: claim?.id ?? stage.id,
      since: asked?.askedAt ?? null,
      concedable: !stage.safety,
      ...cleared(record, stage, asked),
      slot: claim?.id ?? null,
      is,
      from: claim?.from ?? null,
      to: claim?.to ?? null,
    }),
  ]
}

const runs = (claim: Slot, at: Instant): boolean => claim.from <= at && at < claim.to

/** Claims for this stage, or of its party for an assembly that it works on. */
function claimsFor(record: ProjectRecord, stage: Stage): readonly Slot[] {
  const own = slotsForStage(record.slots, stage.id)
  const others = worksOn(stage).flatMap((assembly) =>
    slotsOf(record.slots, assembly).filter(
      (claim) => claim.party === stage.party && claim.stage !== stage.id,
    ),
  )
  return others.length === 0 ? own : [...own, ...others]
}

/** The next claim to come, else the one that ended last. */
function nearest(claims: readonly Slot[], at: Instant): Slot | undefined {
  const agreed = claims
    .filter((claim) => claim.state === 'agreed')
    .sort((a, b) => (a.from < b.from ? -1 : 1))
  return agreed.find((claim) => claim.from > at) ?? agreed.at(-1)
}

/** An earlier slot of the same bay whose work is still going on: the bay isn't free yet. */
const stillIn = (record: ProjectRecord, mine: Slot, at: Instant): Slot | undefined =>
  agreedSlotsIn(record.slots, mine.bay).find(
    (other) =>
      other.id !== mine.id &&
      other.to <= at &&
      other.stage !== null &&
      other.stage !== mine.stage &&
      record.stages.rows.get(other.stage)?.state === 'in work',
  )

const taken = (stage: Stage, mine: Slot, overrun: Slot) =>
  unmet({
    rule: 'slot',
    entity: mine.id,
    root: overrun.stage ?? overrun.id,
    since: overrun.to,
    concedable: !stage.safety,
    clearedBy: [overrun.party],
    clearedWith: { command: 'stage.end', input: { stage: overrun.stage } },
    slot: mine.id,
    is: 'bay taken',
    from: mine.from,
    to: mine.to,
  })

function cleared(
  record: ProjectRecord,
  stage: Stage,
  asked: Slot | undefined,
): { clearedBy: PartyId[]; clearedWith: Clearing } {
  if (asked === undefined) {
    // What is fitted goes where its host stands: the bay is for the host.
    const assembly = stage.host ?? worksOn(stage)[0]
    const input = { stage: stage.id, ...(assembly !== undefined && { assembly }) }
    return {
      clearedBy: [stage.party],
      clearedWith: { command: 'slot.claim', input },
    }
  }
  const lead = leadOf(record)
  return {
    clearedBy: lead === undefined ? [] : [lead.id],
    clearedWith: { command: 'slot.agree', input: { slot: asked.id } },
  }
}
