'use client'
import * as z from 'zod/mini'
import { Head } from '@/app/_ui/paper.tsx'
import type { ChangeOrder } from '@/lib/record/entities/money.ts'
import { useMoneyView } from '../use-money-view.ts'

const Sums = z.object({ gross: z.number() })
const Moved = z.object({ before: Sums, after: Sums })
/** Of what was kept at the yes, the totals: the rest stands on the leaf. */
const Kept = z.object({
  billed: Sums,
  changeOrder: z.object({ party: z.string() }),
  party: Moved,
  project: z.nullable(Moved),
})

function kept(shown: string | null): z.infer<typeof Kept> | null {
  if (shown === null) return null
  try {
    const parsed = Kept.safeParse(JSON.parse(shown))
    return parsed.success ? parsed.data : null
  } catch {
    return null
  }
}

/** The figures that were shown at the yes, as they were then: they never move again. */
export function WhatYesDid({ order }: { readonly order: ChangeOrder }) {
  const { sum, change, standingOf } = useMoneyView()
  const then = kept(order.shown)
  if (then === null) return null
  const { isOwn, authority } = standingOf(order)
  return (
    <section className="sheet stack">
      <Head title="What the yes did" note="tax included" />
      <table className="table does">
        <thead>
          <tr>
            <th>As it was shown then</th>
            <th className="r">Before</th>
            <th className="r">After</th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <td>This yes</td>
            <td className="r">–</td>
            <td className="r">{change(then.billed.gross)}</td>
          </tr>
          <tr>
            <td>{then.changeOrder.party}, in all</td>
            <td className="r">{sum(then.party.before.gross)}</td>
            <td className="r">{sum(then.party.after.gross)}</td>
          </tr>
          {then.project !== null && !(isOwn && authority === null) && (
            <tr className="whole">
              <td>The whole project</td>
              <td className="r">{sum(then.project.before.gross)}</td>
              <td className="r">{sum(then.project.after.gross)}</td>
            </tr>
          )}
        </tbody>
      </table>
      <p className="small soft">
        Kept as it was. It can’t be altered; more or less is a new change order.
      </p>
    </section>
  )
}
