import { type Condition, plain, wrongInput } from '../record/condition.ts'
import type { Coat } from '../record/entities/coating.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import type { Instant } from '../record/scalars.ts'
import { must } from '../record/table.ts'

/**
 * Everything that can't be so of a coat: an end in the future, before its stage began or after its work ended; keyed after it was laid; a colour on
 * what bears none. What went over what isn't judged here: what was done is a fact.
 * @throws {NoSuchEntity} where it names what isn't in the record
 */
export function coatAmiss(record: ProjectRecord, coat: Coat, now: Instant): Condition[] {
  const time = { ...plain(coat.stage ?? coat.assembly), rule: 'time', field: 'endedAt' } as const
  const found: Condition[] = []
  if (coat.endedAt > now) found.push({ ...time, why: 'in the future', limit: now })
  if (coat.stage !== null) {
    const { startedAt, endedAt } = must(record.stages, coat.stage)
    if (startedAt !== null && coat.endedAt < startedAt)
      found.push({ ...time, why: 'before the start', limit: startedAt })
    if (endedAt !== null && coat.endedAt > endedAt)
      found.push({ ...time, why: 'after the end', limit: endedAt })
  }
  if (coat.keyedAt !== null && coat.keyedAt > coat.endedAt)
    found.push(wrongInput(coat.assembly, 'keyedAt', 'a surface is keyed before it is coated'))
  if (coat.colour !== null) {
    if (must(record.colours, coat.colour).removedAt !== null)
      found.push(wrongInput(coat.colour, 'colour', 'this colour is off the list'))
    if (coat.product === 'lacquer' || coat.product === 'filler')
      found.push(wrongInput(coat.assembly, 'colour', `${coat.product} has no formula of a colour`))
  }
  if (coat.air !== null) {
    const air = must(record.airReadings, coat.air)
    if (coat.stage !== null && air.stage !== coat.stage)
      found.push(wrongInput(coat.air, 'air', 'that reading was taken for another stage'))
  }
  return found
}
