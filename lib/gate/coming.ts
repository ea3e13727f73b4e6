import type { PartyId, ProjectId, StageId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import type { CivilDate } from '../record/scalars.ts'
import { all, must } from '../record/table.ts'
import { openHandoversOf, promisesOf } from './indexes.ts'

/** Something on its way to a party. */
export interface Coming {
  readonly project: ProjectId
  readonly kind: 'handover' | 'assembly' | 'part'
  /** The handover, assembly or part. */
  readonly entity: string
  /** The stage that must be done before it comes; null where it only has to be handed over. */
  readonly stage: StageId | null
  readonly from: PartyId | null
  /** The last day promised; only parts have one. */
  readonly promised: CivilDate | null
  readonly promises: number
}

/** What is coming to a party: handovers prepared for it, assemblies whose stage ends with one, parts on order. */
export function comingTo(record: ProjectRecord, party: PartyId): Coming[] {
  const base = { project: record.id, promised: null, promises: 0 }
  const handovers = all(record.handovers)
    .filter((handover) => handover.to === party && handover.state === 'prepared')
    .map(
      (handover): Coming => ({
        ...base,
        kind: 'handover',
        entity: handover.id,
        stage: null,
        from: handover.from,
      }),
    )
  const assemblies = all(record.stages)
    .filter(
      (stage) =>
        stage.removedAt === null && stage.handoverTo === party && stage.state !== 'signed off',
    )
    .flatMap((stage) =>
      stage.assemblies
        .filter((id) => {
          const { custodian, host } = must(record.assemblies, id)
          const underWay = openHandoversOf(record.handovers, id).some(({ to }) => to === party)
          return custodian !== party && host === null && !underWay
        })
        .map(
          (entity): Coming => ({
            ...base,
            kind: 'assembly',
            entity,
            stage: stage.id,
            from: stage.party,
          }),
        ),
    )
  const parts = all(record.parts)
    .filter((part) => part.party === party && part.withdrawnAt === null && part.state === 'ordered')
    .map((part): Coming => {
      const promises = promisesOf(record.promises, part.id)
      return {
        project: record.id,
        kind: 'part',
        entity: part.id,
        stage: null,
        from: part.supplier,
        promised: promises.at(-1)?.date ?? null,
        promises: promises.length,
      }
    })
  return [...handovers, ...assemblies, ...parts]
}
