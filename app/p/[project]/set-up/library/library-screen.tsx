'use client'
import Link from 'next/link'
import { useMemo, useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { SelectField } from '@/app/_ui/form/text-field.tsx'
import { TickSet } from '@/app/_ui/form/tick-set.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { EmptyState, Head, Notice } from '@/app/_ui/paper.tsx'
import { partiesHere, useDesk } from '@/app/_ui/use-desk.ts'
import { type Chosen, chooseStages, type Scope, scopes } from '@/lib/library/choose-stages.ts'
import { fullRestoration } from '@/lib/library/library.ts'
import { leadOf, ownerOf } from '@/lib/record/actor.ts'
import { all } from '@/lib/record/table.ts'
import { label } from '@/lib/words/labels.ts'
import { counted, hours } from '@/lib/words/money.ts'
import { atStart } from '@/lib/words/names.ts'

const scopeWords: { readonly [S in Scope]: string } = {
  full: 'Everything',
  body: 'Body and paint only',
  mechanical: 'Mechanical work only',
  trim: 'Trim only',
}
const optionWords: { readonly [option: string]: string } = {
  runs_on_arrival: 'It runs as it comes in',
  flow_coats: 'Lacquer is flatted and flow-coated',
  closed_car: 'A closed car: headlining',
  open_car: 'An open car: hood',
}
const plain = (key: string): string =>
  atStart(key.replaceAll('_', ' ').replace('highbuild', 'high build'))

/** A build order out of the stage library: what of the car, which shops, and all that appears and is left out before it is made. */
export function LibraryScreen() {
  const { record, standing } = useDesk()
  const press = usePress('library.build', 'The build order is made. It is yours to change.')
  const [scope, setScope] = useState<Scope>('full')
  const [options, setOptions] = useState<readonly string[]>(['runs_on_arrival', 'closed_car'])
  const [parties, setParties] = useState<{ readonly [trade: string]: string }>({})
  const chosen = useMemo(() => chooseStages(fullRestoration, { scope, options }), [scope, options])
  const lead = leadOf(record)
  const owner = ownerOf(record)
  if (!standing.managesLead)
    return <EmptyState title="The lead makes the build order.">Ask them to.</EmptyState>
  const there = all(record.stages).filter(({ removedAt }) => removedAt === null).length
  const trades = [
    ...new Set(
      chosen.stages.flatMap(({ trade, point }) => (point === null ? [trade] : [trade, point.who])),
    ),
  ].filter((trade) => trade !== 'owner')
  const shops = partiesHere(record).filter(({ id, role }) => id !== owner?.id && role !== 'owner')
  return (
    <div className="stack">
      <p className="way">
        <Link href={`/p/${record.id}/set-up`}>Project set-up</Link>
      </p>
      {there > 0 && (
        <Notice mark="held">
          <p>
            <b>There are stages already.</b> The library begins a build order; it never changes one
            that is there.
          </p>
        </Notice>
      )}
      <form
        className="cols cols-2"
        noValidate
        onSubmit={(event) => {
          event.preventDefault()
          const named = trades.flatMap((trade) => {
            const party = parties[trade]
            return party === undefined || party === '' ? [] : [{ trade, party }]
          })
          void press.send({ scope, options: [...options], parties: named })
        }}
      >
        <section className="sheet stack">
          <Head title="From the stage library" />
          <p className="small">
            The stages of a full restoration, with links, checks, points and three-point hours. They
            are typical, from common practice: the maker’s sheets and the car in hand replace every
            limit.
          </p>
          <SelectField
            label="What is restored"
            value={scope}
            onChange={(value) => setScope(scopes.find((one) => one === value) ?? 'full')}
            options={scopes.map((value) => ({ value, label: scopeWords[value] }))}
          />
          <TickSet
            label="This car"
            choices={fullRestoration.options.map((value) => ({
              value,
              label: optionWords[value] ?? plain(value),
            }))}
            picked={options}
            onChange={setOptions}
          />
          <h3>Who does which trade</h3>
          {trades.map((trade) => (
            <SelectField
              key={trade}
              label={plain(trade)}
              value={parties[trade] ?? ''}
              onChange={(party) => setParties({ ...parties, [trade]: party })}
              none={`${lead?.name ?? 'The lead'}`}
              options={shops
                .filter(({ id }) => id !== lead?.id)
                .map(({ id, name }) => ({ value: id, label: name }))}
            />
          ))}
        </section>
        <div className="stack">
          <Preview chosen={chosen} />
          <section className="sheet stack">
            <PressFoot
              press={press}
              disabled={there > 0}
              label={label('library.build')}
              note="From then on it is this project’s own: change, split, move and remove as you like."
            />
            {press.command.done && (
              <p className="way">
                <Link href={`/p/${record.id}/build-order`}>Open the build order</Link>
              </p>
            )}
          </section>
        </div>
      </form>
    </div>
  )
}

/** What would appear, group by group, and what would not, and why. */
function Preview({ chosen }: { readonly chosen: Chosen }) {
  const { reader } = useDesk()
  const { locale } = reader
  const groups = Map.groupBy(chosen.stages, ({ group }) => group)
  const likely = chosen.stages.reduce((sum, stage) => sum + stage.hours.m, 0)
  return (
    <section className="sheet stack" aria-live="polite">
      <Head title="What appears" note={counted(chosen.stages.length, 'stage', 'stages', locale)} />
      <p className="small">
        {counted(chosen.links.length, 'link', 'links', locale)} · {hours(likely, locale)} of work,
        likely
      </p>
      {[...groups].map(([group, stages]) => (
        <details key={group}>
          <summary>
            {plain(group)}: {stages.length}
          </summary>
          <ul className="ruled">
            {stages.map((stage) => (
              <li key={stage.key} className="stack tight">
                <p>{stage.name}</p>
                <p className="small soft">
                  {plain(stage.trade)} · {hours(stage.hours.m, locale)} ·{' '}
                  {counted(stage.checks.length, 'check', 'checks', locale)}
                </p>
              </li>
            ))}
          </ul>
        </details>
      ))}
      {chosen.left.length > 0 && (
        <details>
          <summary>Left out: {chosen.left.length}, and why</summary>
          <ul className="ruled">
            {chosen.left.map(({ name, why }) => (
              <li key={`${name} ${why}`}>
                {name} <span className="small soft">· {why}</span>
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  )
}
