import { didWork } from '../gate/did-work.ts'
import type { Actor } from '../record/actor.ts'
import { leadOf, managesFor, ownerOf } from '../record/actor.ts'
import type { Context } from '../record/command.ts'
import { type Clearing, type Condition, plain, wrongInput } from '../record/condition.ts'
import type { Stage } from '../record/entities/work.ts'
import type { PartyId, ShopId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { all, Hidden, must } from '../record/table.ts'

/** Who releases and countersigns for a one-hand shop on its own work: the lead, or the owner where that shop is the lead. */
function standIn(record: ProjectRecord, stage: Stage): PartyId | null {
  const lead = leadOf(record)
  const other = lead?.id === stage.party ? ownerOf(record) : lead
  return other?.id ?? null
}

/** Whether that person may stand in for `party` on a stage that is the party's own work. */
export function standsIn(
  actor: Actor,
  record: ProjectRecord,
  stage: Stage,
  party: PartyId,
): boolean {
  const other = standIn(record, stage)
  return party === stage.party && other !== null && managesFor(actor, other)
}

/** The shop book that tells how many hands a party has, where it might need somebody to stand in. */
export function bookOfHands(record: ProjectRecord, stage: Stage, party: PartyId): ShopId[] {
  const { shop } = must(record.parties, party)
  return party === stage.party && shop !== null ? [shop] : []
}

/**
 * Why that person may not release a hold point of a stage, or countersign it, for `party`: it is their own work, or they
 * stand in for a shop with other hands. @throws {Hidden} where the shop's hands aren't known here.
 */
export function ownWorkConditions(
  record: ProjectRecord,
  stage: Stage,
  party: PartyId,
  clearedWith: Clearing,
  ctx: Context,
): Condition[] {
  const { actor } = ctx
  const other = party === stage.party ? standIn(record, stage) : null
  if (didWork(stage, actor.person)) {
    return [
      {
        ...plain(stage.id),
        rule: 'own-work',
        since: stage.startedAt,
        clearedBy: other === null ? [party] : [party, other],
        clearedWith,
      },
    ]
  }
  if (actor.party === party || hasOneHand(record, party, ctx)) return []
  const wrong = wrongInput(stage.id, 'party', 'another hand of that shop does it')
  return [{ ...wrong, clearedBy: [party], clearedWith }]
}

function hasOneHand(record: ProjectRecord, party: PartyId, ctx: Context): boolean {
  const { shop } = must(record.parties, party)
  if (shop === null) {
    const persons = all(record.participants).filter(
      (participant) => participant.party === party && participant.removedAt === null,
    )
    return persons.length <= 1
  }
  const book = ctx.shops.get(shop)
  if (book === undefined) throw new Hidden(shop)
  return all(book.memberships).filter((member) => member.removedAt === null).length <= 1
}
