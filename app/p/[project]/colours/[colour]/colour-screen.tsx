'use client'
import Link from 'next/link'
import { useRouter } from 'next/navigation'
import { HeldPress } from '@/app/_ui/form/held-press.tsx'
import { ReasonFold } from '@/app/_ui/form/reason-fold.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { NotHere } from '@/app/_ui/not-here.tsx'
import { Head, Stamp } from '@/app/_ui/paper.tsx'
import { projectPath } from '@/app/_ui/paths.ts'
import { Outcome } from '@/app/_ui/press/outcome.tsx'
import { UnsentMark } from '@/app/_ui/unsent-mark.tsx'
import { type Desk, useDesk } from '@/app/_ui/use-desk.ts'
import { keepTyped } from '@/app/sums/worked-sum.ts'
import { formulaOf } from '@/lib/coating/formula.ts'
import { ownerOf } from '@/lib/record/actor.ts'
import type { Colour, Tinter } from '@/lib/record/entities/coating.ts'
import { all } from '@/lib/record/table.ts'
import { moment } from '@/lib/words/dates.ts'
import { label } from '@/lib/words/labels.ts'
import { figure } from '@/lib/words/money.ts'
import { assemblyName, partyName, personName } from '@/lib/words/names.ts'
import { decimalSign } from '@/lib/words/reading-verdict.ts'
import { ColourForm } from './colour-form.tsx'

/** The colour's card: its formula, batch and gun, its sprayed-out card, and on what it lies. */
export function ColourScreen({ id }: { readonly id: string }) {
  const desk = useDesk()
  const { record, reader, standing } = desk
  const colour = record.colours.rows.get(id)
  if (colour === undefined)
    return <NotHere what="colour" href={projectPath(record.id, 'coating')} />
  const formula = formulaOf(record, colour.id)
  const lies = all(record.coats).filter((coat) => coat.colour === colour.id && coat.offAt === null)
  const own = standing.actsFor(colour.party) && colour.removedAt === null
  const facts = [
    ['Code', colour.code],
    ['Variant', colour.variant],
    ['Batch', colour.batch],
    ['Gun', colour.gun],
    ['Keepsake', colour.keepsake],
  ] as const
  return (
    <div className="stack">
      <p className="way">
        <Link prefetch={false} href={projectPath(record.id, 'coating')}>
          Coating record
        </Link>
      </p>
      <div className="cols cols-main">
        <section className="sheet stack">
          <Head title={colour.name} note={partyName(colour.party, record, reader)} />
          {colour.removedAt !== null && <p>It is off the list.</p>}
          <ul className="ruled">
            {facts.map(([name, value]) => (
              <li key={name}>
                <b>{name}:</b> {value ?? 'not recorded'}
              </li>
            ))}
          </ul>
          <Formula formula={formula} desk={desk} />
          <UnsentMark entity={colour.id} />
          {own && (
            <>
              <details>
                <summary>Describe it anew</summary>
                <ColourForm colour={colour} />
              </details>
              {lies.length === 0 && (
                <ReasonFold
                  name="colour.remove"
                  input={{ colour: colour.id }}
                  label={label('colour.remove')}
                  said="It is off the list."
                />
              )}
            </>
          )}
        </section>
        <div className="stack">
          <SprayedCard colour={colour} desk={desk} />
          <section className="sheet stack">
            <Head title="On what it lies" note={String(lies.length)} />
            {lies.length === 0 && <p>Nothing yet.</p>}
            <ul className="ruled">
              {lies.map((coat) => (
                <li key={coat.id}>
                  <Link
                    className="row-link"
                    prefetch={false}
                    href={projectPath(record.id, `coating/${coat.assembly}`)}
                  >
                    {assemblyName(coat.assembly, record)}
                  </Link>
                  <p className="small">
                    {coat.batch === null ? 'batch not recorded' : `batch ${coat.batch}`} ·{' '}
                    {moment(coat.endedAt, reader)}
                  </p>
                </li>
              ))}
            </ul>
          </section>
        </div>
      </div>
    </div>
  )
}

/** The tinters by weight, and the way to the bench when one was over-poured. */
function Formula({
  formula,
  desk: { reader },
}: {
  readonly formula: readonly Tinter[]
  readonly desk: Desk
}) {
  const router = useRouter()
  if (formula.length === 0) return <p>Its formula is not recorded.</p>
  const total = formula.reduce((sum, { grams }) => sum + grams, 0)
  const grams = (value: number) => `${figure(value, reader.locale, 2)} g`
  const toBench = () => {
    const sign = decimalSign(reader.locale)
    const typed = formula.flatMap((tinter, i) => [
      [`recipe.${i}.name`, tinter.name],
      [`recipe.${i}.grams`, String(tinter.grams).replace('.', sign)],
    ])
    keepTyped('mix-correction', Object.fromEntries(typed))
    router.push('/sums/mix-correction')
  }
  return (
    <>
      <table className="table">
        <thead>
          <tr>
            <th scope="col">Tinter</th>
            <th scope="col">Batch</th>
            <th scope="col" className="r">
              By weight
            </th>
          </tr>
        </thead>
        <tbody>
          {formula.map((tinter) => (
            <tr key={tinter.id}>
              <th scope="row">{tinter.name}</th>
              <td>{tinter.batch ?? 'not recorded'}</td>
              <td className="r">{grams(tinter.grams)}</td>
            </tr>
          ))}
          <tr className="sum">
            <td colSpan={2}>The whole</td>
            <td className="r">{grams(total)}</td>
          </tr>
        </tbody>
      </table>
      <button type="button" className="btn btn-line" onClick={toBench}>
        Over-poured? Correct the mix
      </button>
    </>
  )
}

/** The card sprayed out with lacquer, looked at in daylight: the owner agrees to it, and nobody for the owner. */
function SprayedCard({
  colour,
  desk: { record, reader, standing },
}: {
  readonly colour: Colour
  readonly desk: Desk
}) {
  const press = usePress('colour.cardAgreed', 'The card is agreed.', { colour: colour.id })
  const owner = ownerOf(record)
  const agrees = owner === undefined ? standing.managesLead : standing.actsFor(owner.id)
  const tells = owner !== undefined && !agrees && standing.managesLead
  return (
    <section className="sheet stack">
      <Head title="Sprayed-out card" />
      {colour.cardAt !== null && (
        <Stamp
          word="Agreed"
          lines={[
            colour.cardBy === null ? 'told by phone' : personName(colour.cardBy, reader.people),
            moment(colour.cardAt, reader),
          ]}
        />
      )}
      {colour.cardAt === null && (
        <p>
          Sprayed out with its lacquer and looked at in daylight. Not agreed yet:{' '}
          {owner === undefined ? 'the lead' : partyName(owner.id, record, reader)} agrees.
        </p>
      )}
      {colour.cardAt === null && agrees && (
        <HeldPress
          label={label('colour.cardAgreed')}
          hint="Keep your thumb down for a second."
          waiting={press.waiting}
          onPressed={() => void press.send({ colour: colour.id })}
        />
      )}
      {colour.cardAt === null && tells && (
        <button
          type="button"
          className="btn btn-line"
          disabled={press.waiting}
          onClick={() => void press.send({ colour: colour.id, told: owner.id })}
        >
          {partyName(owner.id, record)} told me by phone
        </button>
      )}
      <Outcome press={press.command} />
    </section>
  )
}
