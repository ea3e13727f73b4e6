import { worksOn } from '@/lib/gate/indexes.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import type { ProjectRecord } from '@/lib/record/project-record.ts'
import type { ShownState } from '@/lib/words/labels.ts'
import { stageNumber } from '@/lib/words/labels.ts'
import { assemblyName, partyName } from '@/lib/words/names.ts'

/** What a person looks for in a build order. */
export interface Search {
  readonly words: string
  readonly state: ShownState | ''
  readonly assembly: string
  readonly by: 'assembly' | 'shop' | 'number'
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

/** The stages that fit a search, in groups, each by number. A stage on several assemblies stands under its first. */
export function groupStages(
  record: ProjectRecord,
  search: Search,
  stateOf: (stage: Stage) => ShownState,
): readonly StageGroup[] {
  const words = search.words
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '')
  const found = [...record.stages.rows.values()]
    .filter(
      (stage) =>
        stage.removedAt === null &&
        (search.assembly === '' || worksOn(stage).some((id) => id === search.assembly)) &&
        fits(stage, words, record) &&
        (search.state === '' || stateOf(stage) === search.state),
    )
    .toSorted((a, b) => a.number - b.number)
  if (search.by === 'number') return [{ id: 'all', title: 'By number', stages: found }]
  const groups = new Map<string, Stage[]>()
  for (const stage of found) {
    const key = search.by === 'shop' ? stage.party : (worksOn(stage)[0] ?? '')
    const group = groups.get(key)
    if (group === undefined) groups.set(key, [stage])
    else group.push(stage)
  }
  return [...groups].map(([id, stages]) => ({
    id,
    title:
      search.by === 'shop'
        ? partyName(id, record)
        : id === ''
          ? 'The car'
          : assemblyName(id, record),
    stages,
  }))
}
