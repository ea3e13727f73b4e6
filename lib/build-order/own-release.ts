import { holdsOf } from '../gate/indexes.ts'
import type { Hold, Stage } from '../record/entities/work.ts'
import type { Entity } from '../record/entity.ts'
import type { PersonId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { inDoubtAfter } from './followers.ts'

/**
 * What becomes of the points that a person cleared on a stage, once they work on it themselves: each is set again, for
 * nobody releases their own work. A fact is never refused, so what was signed off on that release stands in doubt.
 */
export function ownReleasesVoid(
  record: ProjectRecord,
  stage: Stage,
  person: PersonId | null,
): Entity[] {
  if (person === null) return []
  const again = holdsOf(record.holds, stage.id)
    .filter((hold) => hold.clearedAt !== null && hold.clearedBy === person)
    .map(
      (hold): Hold => ({
        ...hold,
        state: hold.visitAt === null ? 'set' : 'invited',
        clearedAt: null,
        clearedBy: null,
        remark: null,
      }),
    )
  const [first] = again
  return first === undefined ? [] : [...again, ...inDoubtAfter(record, [stage.id], first.name)]
}
