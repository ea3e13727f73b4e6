import type { CommandName } from '../../record/command-names.ts'
import type { Part } from '../../record/entities/things.ts'
import type { PartyId } from '../../record/ids.ts'
import type { Instant } from '../../record/scalars.ts'
import { partsOf, promisesOf } from '../indexes.ts'
import { type GateRule, met, unmet } from '../rule.ts'

/** Gate rule 5: the parts it needs have arrived and passed inspection. */
export const part: GateRule = (record, stage) =>
  partsOf(record.parts, stage.id).map((needed) => {
    if (needed.state === 'inspected') return met('part', needed.id)
    const promises = promisesOf(record.promises, needed.id)
    return unmet({
      rule: 'part',
      entity: needed.id,
      root: needed.id,
      since: sinceWhen(needed),
      concedable: !stage.safety,
      clearedBy: whoClears(needed),
      clearedWith: { command: pressFor[needed.state], input: { part: needed.id } },
      part: needed.id,
      is: needed.state,
      promised: promises.at(-1)?.date ?? null,
      promises: promises.length,
    })
  })

const pressFor: { readonly [S in Part['state']]: CommandName } = {
  wanted: 'part.order',
  ordered: 'part.arrive',
  arrived: 'part.inspect',
  inspected: 'part.inspect',
  rejected: 'part.order',
}

/** A part on order waits for who makes it too. */
const whoClears = (needed: Part): PartyId[] =>
  needed.state === 'ordered' && needed.supplier !== null && needed.supplier !== needed.party
    ? [needed.supplier, needed.party]
    : [needed.party]

function sinceWhen(needed: Part): Instant | null {
  if (needed.state === 'wanted') return needed.wantedAt
  if (needed.state === 'ordered') return needed.orderedAt
  if (needed.state === 'arrived') return needed.arrivedAt
  return needed.inspectedAt
}
