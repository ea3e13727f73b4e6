import type { Clearing } from '../../record/condition.ts'
import type { Assembly, Handover } from '../../record/entities/things.ts'
import type { PartyId } from '../../record/ids.ts'
import type { ProjectRecord } from '../../record/project-record.ts'
import { must } from '../../record/table.ts'
import { openHandoversOf, worksOn } from '../indexes.ts'
import { type GateRule, met, unmet } from '../rule.ts'

/**
 * Gate rule 3: the stage's party has custody of every assembly it works on. Never conceded.
 * Custody stays with the releaser until received, so a released handover is cleared by whoever is to receive it.
 */
export const custody: GateRule = (record, stage) =>
  worksOn(stage).map((id) => {
    const assembly = must(record.assemblies, id)
    const { custodian, since } = assembly
    if (custodian === stage.party) return met('custody', id)
    const handover = openHandoversOf(record.handovers, id).find((open) => open.to === stage.party)
    return unmet({
      rule: 'custody',
      entity: id,
      root: id,
      since,
      concedable: false,
      clearedBy: [handover?.state === 'released' ? stage.party : custodian],
      clearedWith: handover === undefined ? prepare(record, assembly, stage.party) : pass(handover),
      custodian,
      handover: handover?.id ?? null,
    })
  })

/** A fitted assembly goes with what it is fitted to, so that is what has to move. */
function prepare(record: ProjectRecord, assembly: Assembly, to: PartyId): Clearing {
  const seen = new Set([assembly.id])
  let moving = assembly
  while (moving.host !== null && !seen.has(moving.host)) {
    seen.add(moving.host)
    moving = must(record.assemblies, moving.host)
  }
  return { command: 'handover.prepare', input: { assemblies: [moving.id], to } }
}

const pass = (handover: Handover): Clearing => ({
  command: handover.state === 'released' ? 'handover.receive' : 'handover.release',
  input: { handover: handover.id },
})
