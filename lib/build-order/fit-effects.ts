import { withFitted } from '../custody/fitted.ts'
import type { Assembly } from '../record/entities/things.ts'
import type { Stage } from '../record/entities/work.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { must } from '../record/table.ts'

/**
 * The assemblies as they are once the work of a stage is over: what it fits is on its host, what it takes off is off.
 * Custody doesn't move here: what one party holds can't be fitted to what another holds, so such a one stays as it is.
 */
export function afterFitting(record: ProjectRecord, stage: Stage): Assembly[] {
  const off = stage.removes
    .map((id) => must(record.assemblies, id))
    .filter((assembly) => assembly.host !== null && assembly.custodian === stage.party)
    .map((assembly) => ({ ...assembly, host: null }))
  const { host } = stage
  if (host === null) return off
  const { custodian } = must(record.assemblies, host)
  const on = stage.fits
    .filter((id) => !withFitted(record, [id]).includes(host))
    .map((id) => must(record.assemblies, id))
    .filter((assembly) => assembly.host !== host && assembly.custodian === custodian)
    .map((assembly) => ({ ...assembly, host }))
  return [...off, ...on]
}

/** What a stage took off, and from where: its own host, or the one thing that all of it was fitted to. */
export function hostOf(record: ProjectRecord, stage: Stage): Stage['host'] {
  if (stage.host !== null) return stage.host
  const hosts = new Set(stage.removes.map((id) => must(record.assemblies, id).host))
  const [only] = hosts
  return hosts.size === 1 && only !== undefined ? only : null
}

/** The assemblies as they were before the work of a stage was over, where nothing has moved them since. */
export function beforeFitting(record: ProjectRecord, stage: Stage): Assembly[] {
  const { host } = stage
  if (host === null) return []
  const { custodian } = must(record.assemblies, host)
  const off = stage.fits
    .map((id) => must(record.assemblies, id))
    .filter((assembly) => assembly.host === host)
    .map((assembly) => ({ ...assembly, host: null }))
  const on = stage.removes
    .map((id) => must(record.assemblies, id))
    .filter((assembly) => assembly.host === null && assembly.custodian === custodian)
    .map((assembly) => ({ ...assembly, host }))
  return [...off, ...on]
}
