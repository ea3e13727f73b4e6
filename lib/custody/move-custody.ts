import type { Assembly } from '../record/entities/things.ts'
import type { AssemblyId, PartyId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import type { Instant } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { withFitted } from './fitted.ts'

/**
 * Those assemblies in the custody of `to` from `at` on, and with them all that is fitted to them.
 * What `to` answers for already is left as it is. @throws {NoSuchEntity}
 */
export function moveCustody(
  record: ProjectRecord,
  assemblies: readonly AssemblyId[],
  to: PartyId,
  at: Instant,
): Assembly[] {
  return withFitted(record, assemblies)
    .map((id) => must(record.assemblies, id))
    .filter((assembly) => assembly.custodian !== to)
    .map((assembly) => ({ ...assembly, custodian: to, since: at }))
}
