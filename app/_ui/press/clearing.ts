import { pathOf, projectPath } from '@/app/_ui/paths.ts'
import { mayPress } from '@/lib/gate/may-press.ts'
import type { Role } from '@/lib/record/actor.ts'
import type { CommandName } from '@/lib/record/command-names.ts'
import type { Clearing, Condition } from '@/lib/record/condition.ts'
import type { ProjectRecord } from '@/lib/record/project-record.ts'
import { label } from '@/lib/words/labels.ts'
import { assemblyName, entityName, stageName } from '@/lib/words/names.ts'
import type { Reader } from '@/lib/words/reader.ts'

/** How a reader gets a condition out of the way. */
export type Way =
  /** One press is enough. */
  | { readonly way: 'press'; readonly clearing: Clearing; readonly label: string }
  /** There is more to say: the screen where it is said. */
  | { readonly way: 'go'; readonly href: string; readonly label: string }
  /** Others can: put it before them. */
  | { readonly way: 'ask'; readonly to: string; readonly label: string }

/** Commands that need nothing but what the condition already says, and can be taken back. */
const presses: ReadonlySet<CommandName> = new Set<CommandName>([
  'slot.agree',
  'changeOrder.send',
  'stage.precautions',
  'stage.insertKeying',
])

/** Everybody of a party but who only looks on, and who has but one link. */
const acts = (role: Role): boolean => role !== 'observer' && role !== 'guest'

/** The screen on which a command is given, where its press needs more than one tap. */
function screenFor(clearing: Clearing, condition: Condition, record: ProjectRecord): string | null {
  const { command, input } = clearing
  const field = (name: string): string | null => {
    const value = input[name]
    return typeof value === 'string' ? value : null
  }
  if (command === 'handover.prepare') {
    const assemblies = Array.isArray(input.assemblies) ? input.assemblies.join(',') : ''
    return projectPath(record.id, `handovers/new?assembly=${assemblies}&to=${field('to') ?? ''}`)
  }
  if (command === 'slot.claim') {
    const asked = ['stage', 'assembly'].flatMap((name) => {
      const value = field(name)
      return value === null ? [] : [`${name}=${value}`]
    })
    return projectPath(record.id, `windows?${asked.join('&')}`)
  }
  if (command === 'inDate.record') return projectPath(record.id, 'people')
  if (command === 'milestone.meet') {
    const stage = record.milestones.rows.get(condition.entity)?.stage
    return stage === undefined ? null : projectPath(record.id, `set-up/stages/${stage}`)
  }
  if (command === 'coat.record' || command === 'coat.strip' || command === 'film.record') {
    const product = field('product')
    return projectPath(
      record.id,
      `coating/${field('assembly') ?? ''}${product === null ? '' : `?product=${product}`}`,
    )
  }
  if (command === 'changeOrder.raise') return projectPath(record.id, 'change-orders/new')
  // What an assembly is fitted to is put right with a reason, where all of them are listed.
  if (command === 'assembly.fit' || command === 'assembly.takeOff' || command === 'stage.add')
    return projectPath(record.id, 'set-up')
  const named = Object.values(input).find(
    (value) => typeof value === 'string' && pathOf(record, value) !== null,
  )
  return pathOf(record, typeof named === 'string' ? named : condition.entity)
}

const OWN_WORDS: ReadonlySet<CommandName> = new Set<CommandName>([
  'slot.claim',
  'stage.precautions',
  'stage.insertKeying',
  'air.record',
  'inDate.record',
  'milestone.meet',
])

function wayLabel(clearing: Clearing, record: ProjectRecord): string {
  if (OWN_WORDS.has(clearing.command)) return label(clearing.command)
  const stage = record.stages.rows.get(String(clearing.input.stage ?? ''))
  if (stage !== undefined) return `Open ${stageName(stage.id, record)}`
  const order = record.changeOrders.rows.get(String(clearing.input.changeOrder ?? ''))
  if (order !== undefined) return `Open change order ${order.number}`
  if (clearing.command === 'hold.release' || clearing.command === 'hold.waive')
    return 'Show the hold point'
  const assembly = clearing.input.assembly
  if (typeof assembly === 'string')
    return label(clearing.command, { name: assemblyName(assembly, record) })
  const part = clearing.input.part
  if (typeof part === 'string') return label(clearing.command, { name: entityName(part, record) })
  return label(clearing.command)
}

/** Whether the reader's party can clear a condition, but only by somebody who answers for it. */
export const isForManagers = ({ clearedBy, clearedWith }: Condition, { view }: Reader): boolean =>
  clearedWith !== null &&
  acts(view.role) &&
  clearedBy.includes(view.party) &&
  !mayPress(clearedWith.command, view.role)

/** Every way this reader has to clear a condition; none where only the clock has one. */
export function waysTo(
  condition: Condition,
  record: ProjectRecord,
  reader: Reader,
): readonly Way[] {
  if (!acts(reader.view.role)) return []
  const { clearedBy, clearedWith } = condition
  const mine = clearedBy.includes(reader.view.party)
  if (mine && clearedWith !== null) {
    if (isForManagers(condition, reader)) return []
    if (presses.has(clearedWith.command)) {
      return [{ way: 'press', clearing: clearedWith, label: wayLabel(clearedWith, record) }]
    }
    const href = screenFor(clearedWith, condition, record)
    return href === null ? [] : [{ way: 'go', href, label: wayLabel(clearedWith, record) }]
  }
  const others = clearedBy.filter((party) => party !== reader.view.party)
  const first = others[0]
  if (mine || first === undefined) return []
  const name = record.parties.rows.get(first)?.name
  return [{ way: 'ask', to: first, label: label('condition.ask', { name }) }]
}
