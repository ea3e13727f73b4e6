'use client'
import Link from 'next/link'
import { Cautions } from '@/app/_ui/cautions.tsx'
import { JournalMark } from '@/app/_ui/journal-mark.tsx'
import { Card, Head, Notice, Stamp, Tag } from '@/app/_ui/paper.tsx'
import { projectPath } from '@/app/_ui/paths.ts'
import { StateMark } from '@/app/_ui/state-mark.tsx'
import { UnsentMark } from '@/app/_ui/unsent-mark.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { sumsPath } from '@/app/sums/for-stage.ts'
import { checksOf, worksOn } from '@/lib/gate/indexes.ts'
import { readReported } from '@/lib/gate/reported.ts'
import { stageStatus } from '@/lib/gate/status.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { Stage } from '@/lib/record/entities/work.ts'
import { day, moment, since, stampMoment } from '@/lib/words/dates.ts'
import { counted, hours } from '@/lib/words/money.ts'
import { assemblyName, entityName, partyName, personName } from '@/lib/words/names.ts'
import type { Reader } from '@/lib/words/reader.ts'
import { ruleName } from '@/lib/words/rule-name.ts'
import { Checks } from './checks.tsx'
import { Concessions } from './concessions.tsx'
import { KeepScreenOn } from './keep-screen-on.tsx'
import { Procedure } from './procedure.tsx'
import { ToldMarks } from './told-marks.tsx'

/** The card of a stage: its state, what it works on, its cautions, its checks, and its stamp. */
export function StageCard({ stage }: { readonly stage: Stage }) {
  const { record, reader, standing } = useDesk()
  const checks = checksOf(record.checks, stage.id)
  // Before its start nothing can be entered, and what keeps it from starting must not be pushed down.
  const toCome = stage.state === 'planned' || stage.state === 'reopened'
  const done = checks.filter((check) => check.state === 'passed').length
  const who = stage.startedBy === null ? '' : ` · ${personName(stage.startedBy, reader.people)}`
  return (
    <Card
      number={stage.number}
      title={stage.name}
      big
      under={
        <>
          {partyName(stage.party, record)}
          {who}
          {about(stage, reader)}
        </>
      }
    >
      <div className="stack">
        <div className="row spread">
          <div className="row">
            <StateMark state={stageStatus(record, stage, reader.now)} />
            <span className="small">{sinceWhen(stage, reader)}</span>
          </div>
          <div className="row">
            {worksOn(stage).map((id) => (
              <Link
                key={id}
                className="tag-link"
                prefetch={false}
                href={projectPath(record.id, `assemblies/${id}`)}
              >
                <Tag>{assemblyName(id, record)}</Tag>
              </Link>
            ))}
          </div>
        </div>
        <UnsentMark entity={stage.id} />
        {stage.removedAt !== null && (
          <Notice mark="declined">
            <p>This stage was removed from the build order, {since(stage.removedAt, reader)}.</p>
          </Notice>
        )}
        {stage.state === 'reopened' && stage.doubt !== null && (
          <p>
            <b>Opened again:</b> {stage.doubt}
          </p>
        )}
        {stage.caution !== null && <Caution text={stage.caution} />}
        <Cautions hazards={stage.hazards} />
        {stage.safety && (
          <p className="small">
            <b>Safety work.</b> Its conditions can’t be conceded. Brakes, steering, structure and
            fuel are for licensed practice and the maker’s data.
          </p>
        )}
        <Brought stage={stage} />
        <ToldMarks entity={stage.id} />
        <ReportedAsDone stage={stage} />
        <Procedure stage={stage} />
        {checks.length > 0 && toCome && (
          <details>
            <summary>
              {counted(checks.length, 'check', 'checks', reader.locale)} once it is in work
            </summary>
            <Checks stage={stage} checks={checks} />
          </details>
        )}
        {checks.length > 0 && !toCome && (
          <>
            <Head title="Checks" note={`${done} of ${checks.length}`} />
            {stage.state === 'in work' && done < checks.length && standing.actsFor(stage.party) && (
              <KeepScreenOn />
            )}
            <Checks stage={stage} checks={checks} />
          </>
        )}
        {standing.actsFor(stage.party) && stage.state !== 'signed off' && (
          <p className="way">
            <Link prefetch={false} href={sumsPath({ project: record.id, stage: stage.id })}>
              Work it out: bench sums
            </Link>
          </p>
        )}
        <Concessions stage={stage} />
        <SignedStamp stage={stage} />
        <JournalMark entity={stage.id} onPaper={stage.state !== 'signed off'} />
      </div>
    </Card>
  )
}

/** What can hurt, in the words of whoever set the stage up; the maker's sheet and local rules come first. */
function Caution({ text }: { readonly text: string }) {
  return (
    <Notice mark="held">
      <p>
        <b>Caution.</b> {text}
      </p>
      <p className="small">
        The maker’s data sheet, local rules and licensed practice come before this card.
      </p>
    </Notice>
  )
}

/** Work done outside the gate, and what was not met then. */
function ReportedAsDone({ stage }: { readonly stage: Stage }) {
  const { record } = useProject()
  if (stage.reported === null) return null
  const unmet = readReported(stage.reported)
  return (
    <div className="shim">
      <p>
        <b>Reported as done</b> outside the gate.{' '}
        {unmet.length === 0 ? 'Every condition was met.' : 'Not met then:'}
      </p>
      <ul>
        {unmet.map(({ rule, entity }) => (
          <li key={`${rule} ${entity}`}>
            {ruleName(rule)}: {entityName(entity, record)}
          </li>
        ))}
      </ul>
    </div>
  )
}

/** The change order or the decision that this stage hangs on, as a way to it. */
function Brought({ stage }: { readonly stage: Stage }) {
  const { record } = useProject()
  const order =
    stage.changeOrder === null ? undefined : record.changeOrders.rows.get(stage.changeOrder)
  const decision = stage.decision === null ? undefined : record.decisions.rows.get(stage.decision)
  if (order === undefined && decision === undefined) return null
  return (
    <p className="way row small">
      {order !== undefined && (
        <Link href={projectPath(record.id, `change-orders/${order.id}`)}>
          Brought by change order {order.number}
        </Link>
      )}
      {decision !== undefined && (
        <Link href={projectPath(record.id, `decisions/${decision.id}`)}>
          Waits on: {decision.question}
        </Link>
      )}
    </p>
  )
}

/** The last signature, as a stamp; earlier and further ones stand as lines. */
function SignedStamp({ stage }: { readonly stage: Stage }) {
  const { record, reader } = useProject()
  if (stage.state !== 'signed off') return null
  const signs = [...record.signOffs.rows.values()].filter(
    (sign) => sign.stage === stage.id && sign.withdrawnAt === null,
  )
  const signed = signs.findLast((sign) => sign.type !== 'countersign')
  return (
    <div className="stack tight">
      {signed !== undefined && (
        <div className="row">
          <Stamp
            word={signed.type === 'confirm' ? 'Confirmed' : 'Signed off'}
            lines={[
              `${personName(signed.person, reader.people)} · ${partyName(signed.party, record)}`,
              stampMoment(signed.at, reader),
            ]}
            fresh
          />
        </div>
      )}
      {signs
        .filter((sign) => sign.type === 'countersign')
        .map((sign) => (
          <p key={sign.id} className="small">
            Countersigned by <b>{partyName(sign.party, record)}</b>,{' '}
            {personName(sign.person, reader.people)}, {moment(sign.at, reader)}.
          </p>
        ))}
    </div>
  )
}

function about(stage: Stage, reader: Reader): string {
  const likely = stage.hoursLikely
  return likely === null ? '' : ` · about ${hours(likely, reader.locale)}`
}

function sinceWhen(stage: Stage, reader: Reader): string {
  const when = {
    planned: null,
    'in work': stage.startedAt,
    paused: stage.pausedAt,
    ended: stage.endedAt,
    'signed off': stage.signedOffAt,
    'in doubt': null,
    reopened: null,
  }[stage.state]
  if (when === null) return ''
  return stage.state === 'signed off' ? day(when, reader) : `since ${moment(when, reader)}`
}
