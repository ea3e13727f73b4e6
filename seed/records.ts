import type { Entity } from '../lib/record/entity.ts'
import type { ProjectId } from '../lib/record/ids.ts'

/** The project that an entity is part of; null where it lies in a shop book only. */
export function projectOf(entity: Entity): ProjectId | null {
  if (entity.kind === 'project') return entity.id
  return 'project' in entity ? entity.project : null
}

/** Entities by the record that they are part of; those of none are left out. */
export function byRecord<Id>(
  entities: readonly Entity[],
  recordOf: (entity: Entity) => Id | null,
): ReadonlyMap<Id, readonly Entity[]> {
  const found = new Map<Id, Entity[]>()
  for (const entity of entities) {
    const record = recordOf(entity)
    if (record !== null) found.set(record, [...(found.get(record) ?? []), entity])
  }
  return found
}
