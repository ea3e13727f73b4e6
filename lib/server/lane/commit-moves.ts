import { joinParts } from '../../journal/parts.ts'
import type { Entity } from '../../record/entity.ts'
import type { Delta } from '../load.ts'
import { type Draft, doneBy } from './draft.ts'
import { type AnyMove, anyMove } from './outcome.ts'

/** What a save did to each record that it changed: one move from the version before to the version after. */
export function movesOf(draft: Draft): AnyMove[] {
  return [...draft.now].flatMap(([id, { record }]) => {
    const from = draft.base.get(id)?.record.version ?? 0
    if (record.version === from) return []
    const steps = draft.taken
      .flatMap(({ moves }) => moves)
      .filter(({ move }) => move.record.id === id)
      .map(({ move }) => move)
    const last = new Map<string, Entity>()
    for (const entity of steps.flatMap(({ entities }) => entities)) {
      last.delete(entity.id)
      last.set(entity.id, entity)
    }
    const doings = steps.flatMap((step) => step.doings)
    return [anyMove(record, { from, to: record.version, entities: [...last.values()], doings })]
  })
}

/** The same of what other nodes did meanwhile. */
export const moveOfDelta = (from: number, { current, entities, entries }: Delta): AnyMove =>
  anyMove(current.record, {
    from,
    to: current.record.version,
    entities,
    doings: entries.map((entry) => doneBy(entry, joinParts(entry.parts).entities)),
  })
