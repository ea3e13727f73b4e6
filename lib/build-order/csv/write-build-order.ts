import type { Check, Hold, Link, Stage } from '../../record/entities/work.ts'
import type { ProjectRecord } from '../../record/project-record.ts'
import { all, indexBy, must } from '../../record/table.ts'
import { writeAfter } from './after-cell.ts'
import { grouped } from './by-name.ts'
import { escaped } from './cell.ts'
import { writeCheck } from './check-cell.ts'
import { columns } from './columns.ts'
import { writeFigure } from './figures.ts'
import { writeHold } from './hold-cell.ts'
import { writeSheet } from './sheet.ts'
import { type NamedPerson, whoIsWho } from './who.ts'

const linksTo = indexBy<Link>((link) => (link.removedAt === null ? [link.to] : []))
const checksOf = indexBy<Check>((check) => (check.removedAt === null ? [check.stage] : []))
const holdsOf = indexBy<Hold>((hold) => [hold.stage])

/**
 * The build order as separated values, in the form that `readBuildOrder` reads: stages by number, what each waits for by
 * name, or by its line where another stage has that name. `people` names the persons who hold.
 */
export function writeBuildOrder(
  record: ProjectRecord,
  people: readonly NamedPerson[] = [],
): string {
  const stages = all(record.stages)
    .filter((stage) => stage.removedAt === null)
    .sort((a, b) => a.number - b.number)
  const lineOf = new Map(stages.map((stage, i) => [stage.id, i + 1]))
  const named = grouped(stages.map((stage) => [stage.name.trim(), stage] as const))
  const who = whoIsWho(record, people)
  const reference = (stage: Stage) => {
    const clear = named.get(stage.name.trim())?.length === 1 && !/^\d+$/.test(stage.name.trim())
    return clear ? { name: stage.name } : { number: lineOf.get(stage.id) ?? 0 }
  }
  const after = (stage: Stage): string =>
    linksTo(record.links, stage.id)
      .filter((link) => lineOf.has(link.from))
      .map((link) => writeAfter({ ...link, stage: reference(must(record.stages, link.from)) }))
      .join(' | ')
  const checks = (stage: Stage): string =>
    [...checksOf(record.checks, stage.id)]
      .sort((a, b) => a.position - b.position)
      .map(writeCheck)
      .join(' | ')
  const holds = (stage: Stage): string =>
    [
      ...new Set(
        holdsOf(record.holds, stage.id).map((hold) =>
          writeHold({ point: hold.point, who: who.say(hold) }),
        ),
      ),
    ].join(' | ')
  const rows = stages.map((stage) => [
    escaped(stage.name),
    escaped(must(record.parties, stage.party).name),
    stage.assemblies.map((id) => escaped(must(record.assemblies, id).name, '|')).join(' | '),
    writeFigure(stage.hoursLeast),
    writeFigure(stage.hoursLikely),
    writeFigure(stage.hoursMost),
    after(stage),
    checks(stage),
    holds(stage),
  ])
  return writeSheet([columns, ...rows])
}
