import type { Rule } from '../record/condition.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { exactSpan } from './dates.ts'
import { assemblyName, atStart, entityName, stageName } from './names.ts'
import type { Reader } from './reader.ts'
import { metOfCoats } from './told-of-coats.ts'

/** What a requirement of the gate that is met says on the card: `60 · Colour and lacquer signed off`. */
export function metSentence(
  requirement: { readonly rule: Rule; readonly entity: string },
  record: ProjectRecord,
  reader: Reader,
): string {
  const { rule, entity } = requirement
  const link = record.links.rows.get(entity)
  switch (rule) {
    case 'predecessor':
      return `${stageName(entity, record)}: signed off`
    case 'countersign':
      return `${stageName(entity, record)}: countersigned`
    case 'least-lag':
      return `${stageName(link?.from ?? '', record)}: cured`
    case 'greatest-lag':
      return `${stageName(link?.from ?? '', record)}: its greatest lag has not run out`
    case 'custody':
      return `${assemblyName(entity, record)}: in the custody of who works on it`
    case 'exclusive-use':
      return `${assemblyName(entity, record)}: nobody else uses it`
    case 'must-be-fitted':
      return `${assemblyName(entity, record)}: fitted, as it must be`
    case 'must-be-off':
      return `${assemblyName(entity, record)}: off, as it must be`
    case 'part':
      return `${entityName(entity, record)}: here and inspected`
    case 'change-order': {
      const order = record.changeOrders.rows.get(entity)
      return order === undefined
        ? 'Its change order is approved'
        : `Change order ${order.number}: approved`
    }
    case 'decision':
      return `Decided: ${entityName(entity, record)}`
    case 'hold': {
      const hold = record.holds.rows.get(entity)
      const word = hold?.state === 'waived' ? 'waived' : 'released'
      return `${atStart(hold?.name ?? 'hold point')}: ${word}`
    }
    case 'precautions':
      return 'Its precautions are in place'
    case 'air':
      return 'Air and surface are read, and fit to spray'
    case 'in-date':
      return 'What the work asks for is in date'
    case 'milestone':
      return `Paid: ${record.milestones.rows.get(entity)?.name ?? 'what was agreed'}`
    case 'coat-over':
    case 'sanded-through':
    case 'bare-metal':
    case 'lacquer-cure':
    case 'film-left':
      return metOfCoats(rule, entity, record)
    case 'slot': {
      const slot = record.slots.rows.get(entity)
      return slot === undefined
        ? 'Its slot is agreed'
        : `Slot agreed, ${exactSpan(slot.from, slot.to, reader)}`
    }
    default:
      return entityName(entity, record)
  }
}
