'use client'
import { Head } from '@/app/_ui/paper.tsx'
import type { Shown } from '@/lib/money/approval.ts'
import { creepOf } from '@/lib/money/creep.ts'
import type { Party } from '@/lib/record/entities/people.ts'
import { perCent } from '@/lib/words/money.ts'
import { useMoneyView } from '../use-money-view.ts'
import { CreepRule } from './creep-rule.tsx'

/** This yes, the shop, the project: now and with it, tax included; how far over the first estimate; what is still open. */
export function WhatYesDoes({
  shown,
  bills,
}: {
  readonly shown: Shown
  readonly bills: Party['bills']
}) {
  const { record, reader, sum, change } = useMoneyView()
  const { billed, party, project, standingConsent } = shown
  const over = (hundredths: number) => perCent(hundredths / 10_000, reader.locale)
  return (
    <section className="sheet stack" aria-label="What your yes does">
      <Head title="What your yes does" />
      <table className="table does">
        <thead>
          <tr>
            <th>Tax included</th>
            <th className="r">Now</th>
            <th className="r">With this yes</th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <td>This yes</td>
            <td className="r">–</td>
            <td className="r">
              <b>{change(billed.gross)}</b>
            </td>
          </tr>
          <tr>
            <td>{shown.changeOrder.party}, in all</td>
            <td className="r">{sum(party.before.gross)}</td>
            <td className="r">
              <b>{sum(party.after.gross)}</b>
            </td>
          </tr>
          {project !== null && (
            <tr className="whole">
              <td>{bills === 'owner' ? 'The whole project' : 'All who bill you'}</td>
              <td className="r">{sum(project.before.gross)}</td>
              <td className="r">{sum(project.after.gross)}</td>
            </tr>
          )}
        </tbody>
      </table>
      {project !== null && project.overBefore !== null && project.overAfter !== null && (
        <div>
          <p>
            <b>
              {over(Math.abs(project.overAfter))} {project.overAfter < 0 ? 'under' : 'over'} the
              first estimate
            </b>{' '}
            of {sum(project.first.net)}, before tax. It was {over(Math.abs(project.overBefore))}{' '}
            {project.overBefore < 0 ? 'under' : 'over'}.
          </p>
          <CreepRule
            steps={creepOf(record, bills)}
            before={project.overBefore}
            after={project.overAfter}
            says={`Over the first estimate: ${over(project.overBefore)} now, ${over(project.overAfter)} with this yes.`}
          />
        </div>
      )}
      {project !== null && <StillOpen project={project} />}
      {standingConsent !== null && (
        <p>
          Within the owner’s standing consent: up to{' '}
          {standingConsent.each === null ? 'nothing' : sum(standingConsent.each)} each,{' '}
          {standingConsent.total === null ? 'nothing' : sum(standingConsent.total)} in all. Used{' '}
          {sum(standingConsent.usedBefore)} so far, {sum(standingConsent.usedAfter)} with this one.
        </p>
      )}
    </section>
  )
}

function StillOpen({ project }: { readonly project: NonNullable<Shown['project']> }) {
  const { sum } = useMoneyView()
  const { openAllowances, otherSent } = project
  const allowed = openAllowances.reduce((running, { net }) => running + net, 0)
  if (openAllowances.length === 0 && otherSent.length === 0)
    return <p className="small">Nothing else is open: no allowance, no other change order.</p>
  return (
    <div className="small stack tight">
      <p>
        <b>Still open besides:</b>
      </p>
      <ul>
        {openAllowances.length > 0 && (
          <li>
            <b className="money">{sum(allowed)}</b> before tax in {openAllowances.length}{' '}
            {openAllowances.length === 1 ? 'allowance' : 'allowances'}:{' '}
            {openAllowances.map(({ party, text }) => `${text} (${party})`).join(', ')}
          </li>
        )}
        {otherSent.map((other) => (
          <li key={`${other.party} ${other.number}`}>
            Change order {other.number}, {other.title} ({other.party}):{' '}
            <b className="money">{sum(other.price.gross)}</b>
            {other.bears === 'owner' ? '' : ', not on your bill'}
          </li>
        ))}
      </ul>
    </div>
  )
}
