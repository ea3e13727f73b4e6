'use client'
import { Notice } from '@/app/_ui/paper.tsx'
import type { UnsentNo } from '@/lib/live/phone/phone-store.ts'
import { useProjectIfAny } from '@/lib/live/project-provider.tsx'
import { type ShopHere, useShopIfAny } from '@/lib/live/shop-provider.tsx'
import type { CommandPress } from '@/lib/live/use-command.ts'
import type { Condition } from '@/lib/record/condition.ts'
import { PartyId, ProjectId, type StageId } from '@/lib/record/ids.ts'
import type { InputIssue } from '@/lib/record/input-issue.ts'
import { emptyProjectRecord } from '@/lib/record/project-record.ts'
import type { Instant } from '@/lib/record/scalars.ts'
import { moment } from '@/lib/words/dates.ts'
import type { Reader } from '@/lib/words/reader.ts'
import { sentence } from '@/lib/words/sentence.ts'
import { ConditionList } from './condition-list.tsx'
import { KEPT_WORDS } from './kept-words.ts'
import { RefusedItem } from './refused-item.tsx'

/** A shop book's refusals speak of nothing in a project. */
const NO_PROJECT = ProjectId.parse('prj_none')
const shopReader = (shop: ShopHere): Reader => ({
  ...shop.place,
  view: { party: PartyId.parse('pty_none'), role: shop.role },
  person: shop.person,
  people: shop.people,
  currency: shop.book.shops.rows.get(shop.book.id)?.currency ?? 'GBP',
})

/** What became of the presses of one place: what is kept and not sent, what was refused as it arrived, what came of the last one. */
export function Outcome({
  press,
  stage,
}: {
  readonly press: CommandPress
  readonly stage?: StageId | undefined
}) {
  const { kept, refused } = press.here
  const last = <LastOutcome press={press} stage={stage} />
  if (kept.length === 0 && refused.length === 0) return last
  return (
    <div className="stack tight">
      {last}
      {kept.length > 0 && !press.waiting && (
        <Notice mark="unsent">
          <p>{KEPT_WORDS.text}</p>
        </Notice>
      )}
      {refused.map((item) => (
        <RefusedItem key={item.place} item={item} presses={press.here}>
          <WhyRefused no={item.no} stage={stage} />
        </RefusedItem>
      ))}
    </div>
  )
}

/** What came of a press that was not done: the refusal with its conditions, what to enter otherwise, or that no answer came. */
function LastOutcome({
  press,
  stage,
}: {
  readonly press: CommandPress
  readonly stage?: StageId | undefined
}) {
  const { refused, refusedAt, issues, message, again } = press
  if (refused.length > 0) return <Refusal conditions={refused} at={refusedAt} stage={stage} />
  if (issues.length > 0) return <Issues issues={issues} />
  if (message === '') return null
  return (
    <div className="stack tight">
      <Notice mark="refused" no>
        <p>{message}</p>
      </Notice>
      {again !== null && (
        <button type="button" className="btn btn-wide" onClick={() => void again()}>
          Send again
        </button>
      )}
    </div>
  )
}

/** A refusal's conditions, each with who can clear it. */
function Refusal({
  conditions,
  at,
  stage,
}: {
  readonly conditions: readonly Condition[]
  readonly at: Instant | null
  readonly stage?: StageId | undefined
}) {
  const project = useProjectIfAny()
  const shop = useShopIfAny()
  if (project !== null) {
    return (
      <div className="stack tight">
        <Notice mark="refused" no>
          <p>
            <b>Refused{at === null ? '' : `, ${moment(at, project.reader)}`}.</b> Nothing was
            changed.
          </p>
        </Notice>
        <ConditionList conditions={conditions} stage={stage} outcome={Outcome} />
      </div>
    )
  }
  if (shop === null) return null
  const reader = shopReader(shop)
  return (
    <Notice mark="refused" no>
      {conditions.map((condition) => {
        const words = sentence(condition, emptyProjectRecord(NO_PROJECT), reader)
        return (
          <p key={`${condition.rule} ${condition.entity}`}>
            <b>{words.fact}.</b> {words.detail}
          </p>
        )
      })}
      <p>Nothing was changed.</p>
    </Notice>
  )
}

/** Fields that are to be entered otherwise. */
const Issues = ({ issues }: { readonly issues: readonly InputIssue[] }) => (
  <Notice mark="refused" no>
    <p>
      <b>Nothing was changed.</b>
    </p>
    <ul>
      {issues.map((issue) => (
        <li key={`${issue.field} ${issue.message}`}>
          {issue.field === '' ? '' : `${issue.field}: `}
          {issue.message}
        </li>
      ))}
    </ul>
  </Notice>
)

/** Why the server said no to what was sent later than it was pressed. */
function WhyRefused({
  no,
  stage,
}: {
  readonly no: UnsentNo | null
  readonly stage?: StageId | undefined
}) {
  if (no === null) return null
  if (no.conditions.length > 0) {
    return <Refusal conditions={no.conditions} at={no.at} stage={stage} />
  }
  if (no.issues.length > 0) return <Issues issues={no.issues} />
  return (
    <Notice mark="refused" no>
      <p>{no.message}</p>
    </Notice>
  )
}
