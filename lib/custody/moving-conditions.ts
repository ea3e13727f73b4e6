import { type Condition, plain } from '../record/condition.ts'
import type { Assembly } from '../record/entities/things.ts'
import type { Stage } from '../record/entities/work.ts'
import type { AssemblyId, PartyId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { all, must } from '../record/table.ts'
import { withFitted } from './fitted.ts'

/** The condition that somebody else answers for an assembly, cleared by a handover from them. */
export function notInCustody(assembly: Assembly, wanted: PartyId): Condition {
  const { id, custodian, since } = assembly
  return {
    ...plain(id),
    rule: 'custody',
    custodian,
    handover: null,
    since,
    clearedBy: [custodian],
    clearedWith: { command: 'handover.prepare', input: { assemblies: [id], to: wanted } },
  }
}

/** Why those assemblies can't leave the hands of `from` together; empty when they can. */
export function movingConditions(
  record: ProjectRecord,
  assemblies: readonly AssemblyId[],
  from: PartyId,
): Condition[] {
  const moving = withFitted(record, assemblies)
  const elsewhere = assemblies
    .map((id) => must(record.assemblies, id))
    .filter((assembly) => assembly.custodian !== from)
    .map((assembly) => notInCustody(assembly, from))
  const fitted = assemblies
    .map((id) => must(record.assemblies, id))
    .flatMap((assembly) => fittedElsewhere(assembly, moving))
  const inWork = all(record.stages)
    .filter((stage) => stage.removedAt === null && stage.state === 'in work')
    .filter((stage) => handles(stage).some((id) => moving.includes(id)))
    .map((stage) => inUse(stage))
  return [...elsewhere, ...fitted, ...inWork]
}

function fittedElsewhere(assembly: Assembly, moving: readonly AssemblyId[]): Condition[] {
  if (assembly.host === null || moving.includes(assembly.host)) return []
  return [
    {
      ...plain(assembly.id),
      rule: 'must-be-off',
      assembly: assembly.host,
      clearedBy: [assembly.custodian],
      clearedWith: { command: 'assembly.takeOff', input: { assembly: assembly.id } },
    },
  ]
}

/** Everything that the hands of a stage are on. */
const handles = (stage: Stage): readonly AssemblyId[] => [
  ...stage.assemblies,
  ...stage.fits,
  ...stage.removes,
  ...(stage.host === null ? [] : [stage.host]),
]

const inUse = (stage: Stage): Condition => ({
  ...plain(stage.id),
  rule: 'exclusive-use',
  stage: stage.id,
  since: stage.startedAt,
  clearedBy: [stage.party],
  clearedWith: { command: 'stage.end', input: { stage: stage.id } },
})
