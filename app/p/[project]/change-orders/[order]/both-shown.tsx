'use client'
import { Head } from '@/app/_ui/paper.tsx'
import type { Shown } from '@/lib/money/approval.ts'
import { useMoneyView } from '../use-money-view.ts'

/** What the reader saw at their press beside what stands now, line by line where they differ. */
export function BothShown({ saw, now }: { readonly saw: Shown; readonly now: Shown }) {
  const { sum } = useMoneyView()
  const rows = differences(saw, now, sum)
  return (
    <section className="sheet stack" role="alert">
      <Head title="It changed while you pressed" />
      <p>Nothing was said for you. Look at both, then answer what stands now.</p>
      <table className="table">
        <thead>
          <tr>
            <th>What</th>
            <th>You saw</th>
            <th>Now</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.what}>
              <td>{row.what}</td>
              <td>{row.saw}</td>
              <td>
                <b>{row.now}</b>
              </td>
            </tr>
          ))}
          {rows.length === 0 && (
            <tr>
              <td colSpan={3}>It stands again as you saw it.</td>
            </tr>
          )}
        </tbody>
      </table>
    </section>
  )
}

interface Row {
  readonly what: string
  readonly saw: string
  readonly now: string
}

function differences(saw: Shown, now: Shown, sum: (minor: number) => string): readonly Row[] {
  const lines = (shown: Shown) =>
    shown.lines.map((line) => `${line.text}: ${sum(line.net)} + ${sum(line.tax)}`).join('; ')
  const open = (shown: Shown) =>
    [
      ...(shown.project?.openAllowances ?? []).map(({ text, net }) => `${text}: ${sum(net)}`),
      ...(shown.project?.otherSent ?? []).map(
        ({ number, title, price }) => `${number} ${title}: ${sum(price.gross)}`,
      ),
    ].join('; ') || 'nothing'
  const consent = ({ standingConsent }: Shown) =>
    standingConsent === null ? 'none' : `${sum(standingConsent.usedBefore)} used`
  const total = (shown: Shown) =>
    shown.project === null
      ? '–'
      : `${sum(shown.project.before.gross)}, with this yes ${sum(shown.project.after.gross)}`
  const all: readonly Row[] = [
    { what: 'Title', saw: saw.changeOrder.title, now: now.changeOrder.title },
    { what: 'Text', saw: saw.changeOrder.text, now: now.changeOrder.text },
    { what: 'Lines', saw: lines(saw), now: lines(now) },
    { what: 'To pay', saw: sum(saw.billed.gross), now: sum(now.billed.gross) },
    {
      what: `${now.changeOrder.party}, in all`,
      saw: `${sum(saw.party.before.gross)}, with this yes ${sum(saw.party.after.gross)}`,
      now: `${sum(now.party.before.gross)}, with this yes ${sum(now.party.after.gross)}`,
    },
    { what: 'The whole project', saw: total(saw), now: total(now) },
    { what: 'Still open besides', saw: open(saw), now: open(now) },
    { what: 'Standing consent', saw: consent(saw), now: consent(now) },
  ]
  return all.filter((row) => row.saw !== row.now)
}
