'use client'
import { Mark, type MarkName } from '@/app/_ui/mark.tsx'
import { fileAddress, Photos } from '@/app/_ui/photos.tsx'
import { ConcedeForm, mayConcede } from '@/app/_ui/press/concede-form.tsx'
import { Outcome } from '@/app/_ui/press/outcome.tsx'
import { UnsentMark } from '@/app/_ui/unsent-mark.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { unpassedChecks } from '@/lib/gate/sign-off.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { Check, Stage } from '@/lib/record/entities/work.ts'
import { moment } from '@/lib/words/dates.ts'
import { counted, limits, reading } from '@/lib/words/money.ts'
import { atStart, personName } from '@/lib/words/names.ts'
import type { Reader } from '@/lib/words/reader.ts'
import { CheckEntry } from './check-entry.tsx'
import { Gauge } from './gauge.tsx'
import { ToldMarks } from './told-marks.tsx'

/** The checks of a stage: what is missing can be entered, what is entered stands with its figures. */
export function Checks({
  stage,
  checks,
}: {
  readonly stage: Stage
  readonly checks: readonly Check[]
}) {
  const inOrder = checks.toSorted((a, b) => a.position - b.position)
  return (
    <ul className="checks">
      {inOrder.map((check) => (
        <CheckRow key={check.id} stage={stage} check={check} />
      ))}
    </ul>
  )
}

/** States in which evidence is taken. */
const takesEvidence: ReadonlySet<string> = new Set(['in work', 'paused', 'ended', 'in doubt'])

function CheckRow({ stage, check }: { readonly stage: Stage; readonly check: Check }) {
  const { record, reader, unsent } = useProject()
  const { standing } = useDesk()
  const concession = [...record.concessions.rows.values()].find(
    (one) => one.withdrawnAt === null && one.rule === 'check' && one.entity === check.id,
  )
  const conceded = concession?.needs.every((party) => concession.parties.includes(party)) ?? false
  const told = !standing.actsFor(stage.party) && standing.managesLead ? stage.party : undefined
  const mayEnter =
    takesEvidence.has(stage.state) && (standing.actsFor(stage.party) || told !== undefined)
  const amiss =
    check.state === 'out of limits'
      ? unpassedChecks(record, stage).find((condition) => condition.entity === check.id)
      : undefined
  return (
    <li className="check" id={check.id}>
      <Mark name={markOf(check, conceded)} />
      <h3>{atStart(check.name)}</h3>
      <Gauge check={check} />
      {check.state !== 'missing' && (
        <p className="val">
          <b>{evidenceOf(check, reader)}</b>
          {check.state === 'out of limits' && <span className="small"> · out of limits</span>}
        </p>
      )}
      <p className="small lim">
        {check.state === 'missing' ? limitsLine(check, reader) : entered(check, reader)}
      </p>
      {unsent.has(check.id) && (
        <div className="enter">
          <UnsentMark entity={check.id} />
        </div>
      )}
      {check.files.length > 0 && (
        <div className="enter">
          {check.type === 'document' ? (
            <Documents project={record.id} files={check.files} />
          ) : (
            <Photos project={record.id} groups={[{ title: check.name, files: check.files }]} />
          )}
        </div>
      )}
      <ToldMarks entity={check.id} />
      {mayEnter && <CheckEntry stage={stage} check={check} told={told} />}
      {amiss !== undefined && !conceded && mayConcede(amiss, stage.id, record, reader) && (
        <div className="enter">
          <ConcedeForm condition={amiss} stage={stage.id} outcome={Outcome} />
        </div>
      )}
    </li>
  )
}

/** Papers are opened, not shown: most are no pictures. */
function Documents({
  project,
  files,
}: {
  readonly project: string
  readonly files: readonly string[]
}) {
  return (
    <ul className="row">
      {files.map((file, n) => (
        <li key={file}>
          <a className="btn btn-line btn-small" href={fileAddress(project, file)}>
            {files.length === 1 ? 'Open the document' : `Open document ${n + 1}`}
          </a>
        </li>
      ))}
    </ul>
  )
}

function markOf(check: Check, conceded: boolean): MarkName {
  if (check.state === 'passed') return 'met'
  if (conceded) return 'conceded'
  return check.state === 'missing' ? 'waiting' : 'refused'
}

function evidenceOf(check: Check, reader: Reader): string {
  switch (check.type) {
    case 'reading':
      return check.value === null ? '' : reading(check.value, check.unit, reader.locale)
    case 'photo':
      return counted(check.files.length, 'photo', 'photos', reader.locale)
    case 'document':
      return counted(check.files.length, 'document', 'documents', reader.locale)
    case 'tick':
      return 'Ticked'
    case 'signature':
      return 'Signed'
  }
}

const needed = {
  reading: 'A reading is needed',
  photo: 'A photo is needed',
  tick: 'A tick is needed',
  document: 'A document is needed',
  signature: 'A signature is needed',
} as const

const limitsLine = (check: Check, reader: Reader): string => {
  const words = limits(check, reader.locale)
  return words === '' ? needed[check.type] : words
}

function entered(check: Check, reader: Reader): string {
  const first =
    check.firstValue === null || check.firstValue === check.value
      ? ''
      : `first ${reading(check.firstValue, check.unit, reader.locale)}`
  const by = check.by === null ? '' : personName(check.by, reader.people)
  const at = check.at === null ? '' : moment(check.at, reader)
  return [
    limits(check, reader.locale),
    first,
    [by, at].filter((part) => part !== '').join(', '),
    check.text ?? '',
  ]
    .filter((part) => part !== '')
    .join(' · ')
}
