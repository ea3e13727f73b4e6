import { leadOf, ownerOf } from '../record/actor.ts'
import { canonicalJson } from '../record/canonical-json.ts'
import type { ChangeOrder } from '../record/entities/money.ts'
import type { Party } from '../record/entities/people.ts'
import type { ChangeOrderId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import type { Minor } from '../record/scalars.ts'
import { sha256Hex } from '../record/sha256.ts'
import { must } from '../record/table.ts'
import { taxOf } from '../record/tax.ts'
import { standingConsentShown } from './standing-consent.ts'
import { addSums, type Sum } from './sum.ts'
import {
  agreedPrice,
  billedBy,
  billersOf,
  changeOrdersOf,
  estimateLinesOf,
  firstEstimate,
  linesOf,
  percentOver,
  priceOf,
  projectAgreedPrice,
  projectFirstEstimate,
} from './totals.ts'

/** On whose authority a change is approved: of who pays the party, or of the lead within the owner's standing consent. */
export type Authority = 'payer' | 'standing consent'

/** The party that pays `party`, and so approves its changes; undefined where the project has none yet. */
export const payerOf = (record: ProjectRecord, party: Party): Party | undefined =>
  party.bills === 'owner' ? ownerOf(record) : leadOf(record)

interface BeforeAfter {
  readonly first: Sum
  readonly before: Sum
  readonly after: Sum
  /** Over the first estimate, net, in hundredths of a per cent; null where there was none. */
  readonly overBefore: number | null
  readonly overAfter: number | null
}

function beforeAfter(first: Sum, before: Sum, added: Sum): BeforeAfter {
  const after = addSums(before, added)
  const over = (net: Minor) => percentOver(first.net, net)
  return { first, before, after, overBefore: over(before.net), overAfter: over(after.net) }
}

/** The project as the payer of this party sees it: every party with the same payer, what is still open of them included. */
function projectShown(
  record: ProjectRecord,
  order: ChangeOrder,
  bills: Party['bills'],
  added: Sum,
) {
  const billers = billersOf(record, bills)
  return {
    ...beforeAfter(projectFirstEstimate(record, bills), projectAgreedPrice(record, bills), added),
    openAllowances: billers.flatMap(({ id, name }) =>
      estimateLinesOf(record, id)
        .filter((line) => line.type === 'allowance')
        .map(({ text, net }) => ({ party: name, text, net })),
    ),
    otherSent: billers.flatMap(({ id, name }) =>
      changeOrdersOf(record, id)
        .filter((other) => other.state === 'sent' && other.id !== order.id)
        .map((other) => ({
          party: name,
          number: other.number,
          title: other.title,
          bears: other.bears,
          price: priceOf(record, other.id),
        })),
    ),
  }
}

/**
 * Everything that is shown before a yes to a change order: its text and lines with tax, the party's and the project's totals
 * before and after, per cent over the first estimate, and what is still open. Within a standing consent the lead sees what
 * is left of it in place of the project, whose other prices are not its business.
 * @throws {NoSuchEntity} @throws {Hidden}
 */
export function shownForApproval(
  record: ProjectRecord,
  id: ChangeOrderId,
  authority: Authority = 'payer',
) {
  const order = must(record.changeOrders, id)
  const party = must(record.parties, order.party)
  const added = billedBy(record, order)
  const { number, title, text, reason, bears, days, files } = order
  return {
    authority,
    currency: must(record.projects, record.id).currency,
    changeOrder: { id, party: party.name, number, title, text, reason, bears, days, files },
    lines: linesOf(record, id).map((line) => ({
      text: line.text,
      quantity: line.quantity,
      unit: line.unit,
      unitPrice: line.unitPrice,
      net: line.net,
      taxRate: line.taxRate,
      tax: taxOf(line.net, line.taxRate),
    })),
    price: priceOf(record, id),
    billed: added,
    party: beforeAfter(firstEstimate(record, party.id), agreedPrice(record, party.id), added),
    project: authority === 'payer' ? projectShown(record, order, party.bills, added) : null,
    standingConsent: authority === 'payer' ? null : standingConsentShown(record, order),
  }
}
/** Text and figures as they stand before the approver. */
export type Shown = ReturnType<typeof shownForApproval>

/** What was shown as canonical JSON, and its SHA-256: the approver sends the hash back with the yes. */
export function shownText(shown: Shown): { readonly text: string; readonly hash: string } {
  const text = canonicalJson(shown)
  return { text, hash: sha256Hex(text) }
}
