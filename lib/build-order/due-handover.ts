import { newHandover } from '../custody/new-handover.ts'
import { openHandoversOf } from '../gate/indexes.ts'
import type { Context } from '../record/command.ts'
import type { Handover } from '../record/entities/things.ts'
import type { Stage } from '../record/entities/work.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { must } from '../record/table.ts'

/**
 * The handover with which a stage ends, prepared; none where it ends with none or one is under way.
 * A fitted assembly goes with its host, so it isn't named.
 */
export function dueHandover(record: ProjectRecord, stage: Stage, ctx: Context): Handover[] {
  const to = stage.handoverTo
  if (to === null || to === stage.party) return []
  const assemblies = stage.assemblies.filter((id) => {
    const assembly = must(record.assemblies, id)
    const free = openHandoversOf(record.handovers, id).length === 0
    return assembly.host === null && assembly.custodian === stage.party && free
  })
  if (assemblies.length === 0) return []
  return [newHandover(record, { assemblies, from: stage.party, to, stage: stage.id }, ctx)]
}
