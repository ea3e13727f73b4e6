import { hoursAfter } from '@/lib/gate/hours-after.ts'
import { linksFrom, promisesOf, worksOn } from '@/lib/gate/indexes.ts'
import type { ProjectRecord } from '@/lib/record/project-record.ts'
import type { CivilDate, Instant } from '@/lib/record/scalars.ts'
import { exactSpan } from '@/lib/words/dates.ts'
import { assemblyName, partyName, stageName } from '@/lib/words/names.ts'
import type { Reader } from '@/lib/words/reader.ts'

/** Cures that still run on an assembly: of which stage, and until when. The one that ends last comes first. */
export function curesOn(
  record: ProjectRecord,
  assembly: string | null,
  now: Instant,
): readonly { readonly stage: string; readonly until: Instant }[] {
  return [...record.stages.rows.values()]
    .flatMap((stage) => {
      const end = stage.endedAt
      const over = stage.state === 'ended' || stage.state === 'signed off'
      if (end === null || !over || stage.removedAt !== null) return []
      if (assembly !== null && !worksOn(stage).some((id) => id === assembly)) return []
      const lag = Math.max(
        0,
        ...linksFrom(record.links, stage.id).map((link) => link.leastLagHours),
      )
      const until = hoursAfter(end, lag)
      return lag > 0 && until > now ? [{ stage: stage.id, until }] : []
    })
    .toSorted((a, b) => (a.until > b.until ? -1 : 1))
}

/** Something with a day to it that is agreed, promised, or runs by the clock; nothing here is a forecast. */
export interface Coming {
  readonly key: string
  readonly when: Instant | CivilDate
  readonly title: string
  readonly detail: string
  /** Promised or asked, not agreed. */
  readonly loose: boolean
  readonly entity: string
}

/** What the record itself says is to come, by day. */
export function coming(record: ProjectRecord, reader: Reader): readonly Coming[] {
  const { now } = reader
  const cures = curesOn(record, null, now).map(
    ({ stage, until }): Coming => ({
      key: `cure ${stage}`,
      when: until,
      title: `${stageName(stage, record)} has cured`,
      detail: 'by the clock',
      loose: false,
      entity: stage,
    }),
  )
  const slots = [...record.slots.rows.values()]
    .filter((slot) => slot.state !== 'released' && slot.from > now)
    .map(
      (slot): Coming => ({
        key: slot.id,
        when: slot.from,
        title: `${assemblyName(slot.assembly, record)} to ${partyName(slot.party, record, reader)}`,
        detail: `${exactSpan(slot.from, slot.to, reader)}, ${slot.state}`,
        loose: slot.state === 'asked',
        entity: slot.id,
      }),
    )
  const parts = [...record.parts.rows.values()].flatMap((part): Coming[] => {
    const promises = promisesOf(record.promises, part.id)
    const last = promises.at(-1)
    if (part.state !== 'ordered' || part.withdrawnAt !== null || last === undefined) return []
    return [
      {
        key: part.id,
        when: last.date,
        title: part.name,
        detail: `promised by ${partyName(last.by, record, reader)}${promises.length > 1 ? `, promise no. ${promises.length}` : ''}`,
        loose: true,
        entity: part.id,
      },
    ]
  })
  const visits = [...record.holds.rows.values()].flatMap((hold): Coming[] =>
    hold.state === 'invited' &&
    hold.removedAt === null &&
    hold.visitAt !== null &&
    hold.visitAt > now
      ? [
          {
            key: hold.id,
            when: hold.visitAt,
            title: `${hold.name}: ${partyName(hold.party, record, reader)} invited`,
            detail: stageName(hold.stage, record),
            loose: false,
            entity: hold.id,
          },
        ]
      : [],
  )
  return [...cures, ...slots, ...parts, ...visits].toSorted((a, b) => (a.when < b.when ? -1 : 1))
}
