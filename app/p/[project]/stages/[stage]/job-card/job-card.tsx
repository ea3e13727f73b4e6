'use client'
import Link from 'next/link'
import { Cautions } from '@/app/_ui/cautions.tsx'
import { NotHere } from '@/app/_ui/not-here.tsx'
import { Head } from '@/app/_ui/paper.tsx'
import { projectPath } from '@/app/_ui/paths.ts'
import { PrintButton } from '@/app/_ui/print-button.tsx'
import { Qr } from '@/app/_ui/qr.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { useOrigin } from '@/app/_ui/use-origin.ts'
import { stepsOf } from '@/lib/build-order/steps.ts'
import { checksOf, linksTo, worksOn } from '@/lib/gate/indexes.ts'
import { stageNumber } from '@/lib/words/labels.ts'
import { hours, limits } from '@/lib/words/money.ts'
import { assemblyName, atStart, listed, partyName, stageName } from '@/lib/words/names.ts'

/** A stage on paper for the bench: what is done in which order, with what, what is to be measured, and the way back to the record. */
export function JobCard({ id }: { readonly id: string }) {
  const { record, reader } = useDesk()
  const origin = useOrigin()
  const stage = record.stages.rows.get(id)
  if (stage === undefined)
    return <NotHere what="stage" href={projectPath(record.id, 'build-order')} />
  const path = projectPath(record.id, `stages/${stage.id}`)
  const steps = stepsOf(record, stage.id)
  const checks = checksOf(record.checks, stage.id).toSorted((a, b) => a.position - b.position)
  const tools = [...new Set(steps.flatMap((step) => step.tools))]
  const before = linksTo(record.links, stage.id).map(({ from }) => stageName(from, record))
  const things = worksOn(stage).map((thing) => assemblyName(thing, record))
  return (
    <div className="stack">
      <p className="row way">
        <Link href={path}>The stage itself</Link>
      </p>
      <article className="sheet stack job-card">
        <div className="job-head">
          <div className="stack tight">
            <p className="small">
              Job card · {record.projects.rows.get(record.id)?.name} ·{' '}
              {partyName(stage.party, record)}
            </p>
            <h2>
              {stageNumber(stage.number)} · {stage.name}
            </h2>
            <p>
              {things.length > 0 ? atStart(listed(things, reader.locale)) : 'No assembly'}
              {stage.hoursLikely !== null && ` · about ${hours(stage.hoursLikely, reader.locale)}`}
              {stage.people > 1 && ` · ${stage.people} hands`}
            </p>
            {before.length > 0 && <p className="small">After {listed(before, reader.locale)}</p>}
          </div>
          <div className="job-squares">
            <Qr
              text={origin === '' ? '' : origin + path}
              alt={`The squares lead to stage ${stageNumber(stage.number)} in the record`}
            />
          </div>
        </div>
        {stage.caution !== null && (
          <p>
            <b>Caution.</b> {stage.caution}
          </p>
        )}
        <Cautions hazards={stage.hazards} unfolded />
        {tools.length > 0 && (
          <p>
            <b>Tools:</b> {listed(tools, reader.locale)}
          </p>
        )}
        {steps.length > 0 && (
          <>
            <Head title="Procedure" />
            <ol className="job-lines">
              {steps.map((step, i) => (
                <li key={step.id}>
                  <span
                    className={step.tickedAt === null ? 'job-box' : 'job-box is-done'}
                    aria-hidden
                  />
                  <span>
                    <b>{i + 1}.</b> {step.text}
                    {step.caution !== null && ` Care: ${step.caution}`}
                  </span>
                </li>
              ))}
            </ol>
          </>
        )}
        <Head title="Checks" />
        {checks.length === 0 && <p className="soft">None is asked.</p>}
        <ul className="job-lines">
          {checks.map((check) => (
            <li key={check.id}>
              <span
                className={check.state === 'missing' ? 'job-box' : 'job-box is-done'}
                aria-hidden
              />
              <span>
                <b>{atStart(check.name)}</b>
                {limits(check, reader.locale) !== '' && ` · ${limits(check, reader.locale)}`}
                {check.unit !== null &&
                  limits(check, reader.locale) === '' &&
                  ` · in ${check.unit}`}
              </span>
              {check.type === 'reading' && <span className="job-blank" aria-hidden />}
            </li>
          ))}
        </ul>
        <p className="small">
          What is written here counts once it is entered in the record. The maker’s data sheet,
          local rules and licensed practice come before this card.
        </p>
        <div className="job-lines">
          <p>
            <span className="job-blank is-wide" aria-hidden /> Name and day
          </p>
        </div>
      </article>
      <PrintButton label="Print the job card" />
    </div>
  )
}
