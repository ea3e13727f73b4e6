import type { View } from '../record/actor.ts'
import { findEntity } from '../record/any-entity.ts'
import type { Condition } from '../record/condition.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { isSeen, seeAs } from './see.ts'
import { type Viewer, viewerOf } from './viewer.ts'

/**
 * A refusal's conditions as that view may know them: of something hidden it learns that it stands in the way and who can
 * clear it, and nothing else.
 */
export function seeConditions(
  view: View,
  record: ProjectRecord,
  conditions: readonly Condition[],
): Condition[] {
  const viewer = viewerOf(view, record)
  return conditions.map((condition) => seeCondition(viewer, condition))
}

function seeCondition(viewer: Viewer, condition: Condition): Condition {
  const { root, clearedWith, ...facts } = condition
  if (idsIn(facts).some((id) => isHidden(viewer, id)) || tellsMoney(viewer, condition)) {
    const { entity, concedable, clearedBy } = condition
    const plain = { entity, root: entity, since: null, concedable, clearedBy, clearedWith: null }
    return { ...plain, rule: 'unknown' }
  }
  const reachable = !idsIn(clearedWith).some((id) => isHidden(viewer, id))
  return {
    ...condition,
    root: isHidden(viewer, root) ? condition.entity : root,
    clearedWith: reachable ? clearedWith : null,
  }
}

/** Every text in a value that may be an id. */
function idsIn(value: unknown): string[] {
  if (typeof value === 'string') return /^[a-z]{3}_[0-9a-z]+$/.test(value) ? [value] : []
  if (typeof value !== 'object' || value === null) return []
  return Object.values(value).flatMap(idsIn)
}

/** What isn't in the record (a bay, a person, something not made yet) hides nothing. */
function isHidden(viewer: Viewer, id: string): boolean {
  const entity = findEntity(viewer.record, id)
  return entity !== undefined && !isSeen(seeAs(viewer, entity))
}

/** The sums of a standing consent are the project's own money. */
const tellsMoney = (viewer: Viewer, condition: Condition): boolean =>
  condition.rule === 'standing-consent' && !viewer.money(null)
