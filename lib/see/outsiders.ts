import type { Entity } from '../record/entity.ts'
import type { Viewer } from './viewer.ts'

/**
 * What a supplier or a guest sees, who are let in for one thing only. A supplier: the project, its parties and assemblies, the
 * parts it supplies with their promises, and handovers from or to itself. A guest: handovers to the party it receives for
 * (the link narrows that to one).
 */
export function outsiderSees({ view, record }: Viewer, entity: Entity): boolean {
  const { party, role } = view
  if (role === 'guest') return entity.kind === 'handover' && entity.to === party
  switch (entity.kind) {
    case 'project':
    case 'party':
    case 'assembly':
      return true
    case 'participant':
      return entity.party === party
    case 'part':
      return entity.supplier === party
    case 'promise':
      return record.parts.rows.get(entity.part)?.supplier === party
    case 'handover':
      return entity.from === party || entity.to === party
    default:
      return false
  }
}
