import type { Effect } from '../plan/effect.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { day, sameDay } from './dates.ts'
import { counted } from './money.ts'
import { stageName } from './names.ts'
import type { Reader } from './reader.ts'

/** So many names are said; of the rest only the number. */
const SAID = 3
const DAY_HOURS = 24

const named = (ids: readonly string[], record: ProjectRecord, locale: string): string => {
  const names = ids.slice(0, SAID).map((id) => stageName(id, record))
  const rest = ids.length - names.length
  return rest > 0
    ? `${names.join(', ')} and ${counted(rest, 'other', 'others', locale)}`
    : names.join(', ')
}

/** What a change would do, in sentences; `record` is as it would be. */
export function effectWords(
  effect: Effect,
  record: ProjectRecord,
  reader: Reader,
): readonly string[] {
  const { locale } = reader
  const { endBefore, endAfter, opened, shut, moved } = effect
  const ends =
    endBefore === null || endAfter === null || sameDay(endBefore, endAfter, reader)
      ? ['The end stays where it is, as the build order stands.']
      : [
          `The end goes from ${day(endBefore, reader)} to ${day(endAfter, reader)}, as the build order stands.`,
        ]
  const days = moved.filter(({ hours }) => Math.abs(hours) >= DAY_HOURS)
  return [
    ...ends,
    ...(opened.length > 0 ? [`Could start then: ${named(opened, record, locale)}.`] : []),
    ...(shut.length > 0
      ? [`Could start now, and not any more: ${named(shut, record, locale)}.`]
      : []),
    ...(days.length > 0
      ? [
          `By a day or more later or sooner: ${named(
            days.map(({ stage }) => stage),
            record,
            locale,
          )}.`,
        ]
      : []),
  ]
}
