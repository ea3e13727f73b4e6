import type { Slot } from '../../lib/record/entities/things.ts'
import type { ProjectRecord, ShopRecord } from '../../lib/record/project-record.ts'
import { all } from '../../lib/record/table.ts'
import { openChecks } from './naive-gate.ts'

// What holds of a record at any time, whatever was pressed.

/** Everything that is wrong with a project as it stands; empty where all is well. */
export const wrongInProject = (record: ProjectRecord): string[] => [
  ...custody(record),
  ...stages(record),
  ...circles(record),
  ...doubleBooked(all(record.slots), (slot) => slot.assembly).map((s) => `assembly ${s}`),
]

/** Everything that is wrong with a shop book. */
export const wrongInBook = (book: ShopRecord): string[] => [
  ...doubleBooked(all(book.slots), (slot) => slot.bay).map((s) => `bay ${s}`),
  ...(all(book.memberships).some(({ role, removedAt }) => role === 'manager' && removedAt === null)
    ? []
    : ['a shop without a manager']),
]

function custody(record: ProjectRecord): string[] {
  const wrong: string[] = []
  for (const assembly of all(record.assemblies)) {
    const custodian = record.parties.rows.get(assembly.custodian)
    if (custodian === undefined || custodian.leftAt !== null || custodian.role === 'observer')
      wrong.push(`${assembly.name} is in the custody of nobody who takes part`)
    let host = assembly.host
    for (let up = 0; host !== null; up++) {
      const on = record.assemblies.rows.get(host)
      if (on === undefined || up > record.assemblies.rows.size) {
        wrong.push(`${assembly.name} is fitted in a circle or to nothing`)
        break
      }
      if (on.custodian !== assembly.custodian)
        wrong.push(`${assembly.name} is not in the custody of whoever has ${on.name}`)
      host = on.host
    }
  }
  return wrong
}

function stages(record: ProjectRecord): string[] {
  const wrong: string[] = []
  for (const stage of all(record.stages)) {
    const say = (what: string) => wrong.push(`${stage.name} (${stage.state}): ${what}`)
    const begun = stage.state !== 'planned' && stage.state !== 'reopened'
    const isOver = ['ended', 'signed off', 'in doubt'].includes(stage.state)
    if (begun && stage.startedAt === null) say('never started')
    if (begun && stage.removedAt !== null) say('removed')
    if (isOver && (stage.endedAt === null || stage.endedAt < (stage.startedAt ?? '')))
      say('over without an end after its start')
    if (begun && !isOver && stage.endedAt !== null) say('going on with an end')
    if (stage.state === 'signed off') {
      if (openChecks(record, stage).length > 0) say('signed off without its checks')
      const signed = all(record.signOffs).some(
        (sign) =>
          sign.stage === stage.id && sign.withdrawnAt === null && sign.type !== 'countersign',
      )
      if (!signed) say('signed off without a signature')
    }
    if (stage.state !== 'signed off' && stage.state !== 'in doubt') {
      const signed = all(record.signOffs).some(
        (sign) => sign.stage === stage.id && sign.withdrawnAt === null,
      )
      if (signed) say('a signature stands on what isn’t signed off')
    }
  }
  const numbers = all(record.stages).map(({ number }) => number)
  if (new Set(numbers).size < numbers.length) wrong.push('two stages have the same number')
  return wrong
}

/** Takes away, again and again, what waits for nothing; what is left waits in a circle. */
function circles(record: ProjectRecord): string[] {
  let links = all(record.links).filter(({ removedAt }) => removedAt === null)
  for (;;) {
    const waiting = new Set(links.map(({ to }) => to))
    const left = links.filter(({ from }) => waiting.has(from))
    if (left.length === links.length) return links.map(({ id }) => `${id} is part of a circle`)
    links = left
  }
}

function doubleBooked(slots: readonly Slot[], by: (slot: Slot) => string): string[] {
  const agreed = slots.filter(({ state }) => state === 'agreed')
  return agreed.flatMap((one, i) => [
    ...(one.from < one.to ? [] : [`${by(one)} for no time`]),
    ...agreed
      .slice(i + 1)
      .filter((two) => by(one) === by(two) && one.from < two.to && two.from < one.to)
      .map((two) => `${by(one)} twice at a time: ${one.id} and ${two.id}`),
  ])
}
