import { worksOn } from '@/lib/gate/indexes.ts'
import type { LaidOut } from '@/lib/plan/laid-out.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import type { ProjectRecord } from '@/lib/record/project-record.ts'
import { civilDateIn, daysAfter, mondayOf } from '@/lib/record/zoned-time.ts'
import { day } from '@/lib/words/dates.ts'
import type { ShownState } from '@/lib/words/labels.ts'
import { stageNumber } from '@/lib/words/labels.ts'
import { assemblyName, partyName } from '@/lib/words/names.ts'
import type { Place } from '@/lib/words/reader.ts'

/** What a person looks for in a build order. */
export interface Search {
  readonly words: string
  readonly state: ShownState | ''
  readonly assembly: string
  readonly shop: string
  readonly by: 'week' | 'assembly' | 'shop' | 'number'
}

export interface StageGroup {
  readonly id: string
  readonly title: string
  readonly stages: readonly Stage[]
}

/** Every word is in its number, name, group, shop or assemblies. */
function fits(stage: Stage, words: readonly string[], record: ProjectRecord): boolean {
  const text = [
    stageNumber(stage.number),
    String(stage.number),
    stage.name,
    stage.group ?? '',
    partyName(stage.party, record),
    ...worksOn(stage).map((id) => assemblyName(id, record)),
  ]
    .join(' ')
    .toLowerCase()
  return words.every((word) => text.includes(word))
}

/** The stages that fit a search, by number. */
export function findStages(
  record: ProjectRecord,
  search: Search,
  stateOf: (stage: Stage) => ShownState,
): readonly Stage[] {
  const words = search.words
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '')
  return [...record.stages.rows.values()]
    .filter(
      (stage) =>
        stage.removedAt === null &&
        (search.assembly === '' || worksOn(stage).some((id) => id === search.assembly)) &&
        (search.shop === '' || stage.party === search.shop) &&
        fits(stage, words, record) &&
        (search.state === '' || stateOf(stage) === search.state),
    )
    .toSorted((a, b) => a.number - b.number)
}

/** Those stages in groups. A stage on several assemblies stands under its first. */
export function groupStages(
  record: ProjectRecord,
  found: readonly Stage[],
  by: Search['by'],
  laidOut: LaidOut,
  place: Place,
): readonly StageGroup[] {
  if (by === 'number') return [{ id: 'all', title: 'By number', stages: found }]
  if (by === 'week') return byWeek(found, laidOut, place)
  const groups = Map.groupBy(found, (stage): string =>
    by === 'shop' ? stage.party : (worksOn(stage)[0] ?? ''),
  )
  return [...groups].map(([id, stages]) => ({
    id,
    title: by === 'shop' ? partyName(id, record) : id === '' ? 'The car' : assemblyName(id, record),
    stages,
  }))
}

/** What is in work, then the weeks in which the rest begins, each by its days; what is over comes last. */
function byWeek(found: readonly Stage[], { stages }: LaidOut, place: Place): readonly StageGroup[] {
  const zone = place.timeZone
  const thisWeek = mondayOf(civilDateIn(place.now, zone))
  const begins = ({ id }: Stage): string => stages.get(id)?.from ?? place.now
  const keyOf = (stage: Stage): string => {
    const tense = stages.get(stage.id)?.tense
    return tense === 'to come' ? mondayOf(civilDateIn(begins(stage), zone)) : (tense ?? 'to come')
  }
  const titleOf = (key: string, first: Stage): string => {
    if (key === 'begun') return 'In work'
    if (key === 'over') return 'Over'
    if (key === thisWeek) return 'This week'
    if (key === daysAfter(thisWeek, 7)) return 'Next week'
    return `Week of ${day(mondayOf(civilDateIn(begins(first), zone)), place)}`
  }
  return [...Map.groupBy(found, keyOf)]
    .toSorted(([a], [b]) => rank(a).localeCompare(rank(b)))
    .map(([key, group]) => {
      const inTime = group.toSorted((a, b) => begins(a).localeCompare(begins(b)))
      const [first] = inTime
      return {
        id: key,
        title: first === undefined ? '' : titleOf(key, first),
        stages: key === 'over' ? inTime.toReversed() : inTime,
      }
    })
}

const rank = (key: string): string => (key === 'begun' ? '0' : key === 'over' ? '9' : `1 ${key}`)
