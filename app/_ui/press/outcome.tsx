'use client'
import { Notice } from '@/app/_ui/paper.tsx'
import { useProjectIfAny } from '@/lib/live/project-provider.tsx'
import { type ShopHere, useShopIfAny } from '@/lib/live/shop-provider.tsx'
import type { CommandPress } from '@/lib/live/use-command.ts'
import { PartyId, ProjectId, type StageId } from '@/lib/record/ids.ts'
import { emptyProjectRecord } from '@/lib/record/project-record.ts'
import { moment } from '@/lib/words/dates.ts'
import type { Reader } from '@/lib/words/reader.ts'
import { sentence } from '@/lib/words/sentence.ts'
import { ConditionList } from './condition-list.tsx'

/** A shop book's refusals speak of nothing in a project. */
const NO_PROJECT = ProjectId.parse('prj_none')
const shopReader = (shop: ShopHere): Reader => ({
  ...shop.place,
  view: { party: PartyId.parse('pty_none'), role: shop.role },
  person: shop.person,
  people: shop.people,
  currency: shop.book.shops.rows.get(shop.book.id)?.currency ?? 'GBP',
})

/** What came of a press that was not done: the refusal with its conditions, what to enter otherwise, or that no answer came. */
export function Outcome({
  press,
  stage,
}: {
  readonly press: CommandPress
  readonly stage?: StageId | undefined
}) {
  const project = useProjectIfAny()
  const { refused, refusedAt, issues, message, again } = press
  const shop = useShopIfAny()
  if (refused.length > 0 && project === null && shop !== null) {
    const reader = shopReader(shop)
    return (
      <Notice mark="refused" no>
        {refused.map((condition) => {
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
  if (refused.length > 0 && project !== null) {
    return (
      <div className="stack tight">
        <Notice mark="refused" no>
          <p>
            <b>Refused{refusedAt === null ? '' : `, ${moment(refusedAt, project.reader)}`}.</b>{' '}
            Nothing was changed.
          </p>
        </Notice>
        <ConditionList conditions={refused} stage={stage} outcome={Outcome} />
      </div>
    )
  }
  if (issues.length > 0) {
    return (
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
  }
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
