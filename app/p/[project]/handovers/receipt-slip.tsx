import Link from 'next/link'
import { JournalMark } from '@/app/_ui/journal-mark.tsx'
import { Photos } from '@/app/_ui/photos.tsx'
import { SIGNATURE } from '@/lib/custody/signature.ts'
import type { Handover } from '@/lib/record/entities/things.ts'
import type { ProjectRecord } from '@/lib/record/project-record.ts'
import type { Instant } from '@/lib/record/scalars.ts'
import { day, stampMoment, timeOfDay } from '@/lib/words/dates.ts'
import { atStart, listed, partyName, personName, stageName } from '@/lib/words/names.ts'
import type { Reader } from '@/lib/words/reader.ts'
import { assembliesOf, handoverNumber, piecesIn, whatMoves } from './handover-facts.ts'

interface SlipProps {
  readonly handover: Handover
  readonly record: ProjectRecord
  readonly reader: Reader
}

/** The leaf of a handover as it stands: prepared, on its way, received or refused. Print gives it on white paper. */
export function ReceiptSlip({ handover, record, reader }: SlipProps) {
  const what = whatMoves(handover, record, reader.locale)
  const all = assembliesOf(handover, record)
  const { from, to } = handover
  return (
    <div className="pad">
      <article className="slip stack">
        <div className="row spread slip-top">
          <div className="row slip-name">
            <span className="num num-big">{handoverNumber(handover, record)}</span>
            <div>
              <p className="small">
                {handover.receivedAt === null ? 'Handover' : 'Handover, receipt'}
              </p>
              <h2 className="big title">{what}</h2>
              {all.length > 2 && <p className="small">All of it: {listed(all, reader.locale)}</p>}
              {handover.stage !== null && (
                <p className="small">
                  for stage{' '}
                  <Link href={`/p/${record.id}/stages/${handover.stage}`}>
                    {stageName(handover.stage, record)}
                  </Link>
                </p>
              )}
            </div>
          </div>
          <StateOf handover={handover} reader={reader} />
        </div>
        <div className="two">
          <Side
            title={handover.releasedAt === null ? 'To be released by' : 'Released by'}
            party={atStart(partyName(from, record))}
            person={
              handover.releasedBy === null ? null : personName(handover.releasedBy, reader.people)
            }
            at={handover.releasedAt === null ? null : onLeaf(handover.releasedAt, reader)}
          />
          <Side
            title={handover.receivedAt === null ? 'To be received by' : receivedTitle(handover)}
            party={atStart(partyName(to, record))}
            person={
              handover.receivedByName ??
              (handover.receivedBy === null ? null : personName(handover.receivedBy, reader.people))
            }
            at={handover.receivedAt === null ? null : onLeaf(handover.receivedAt, reader)}
          />
        </div>
        <Answers {...{ handover, record, reader, what }} />
        <hr className="perf perf-tight" />
        <Compared {...{ handover, record, reader }} />
        {handover.care !== '' && (
          <div>
            <h3>Care</h3>
            <p className="prose">{handover.care}</p>
          </div>
        )}
        <Photos
          project={record.id}
          groups={[
            { title: `Released${clock(handover.releasedAt, reader)}`, files: handover.files },
            {
              title: `Received${clock(handover.receivedAt, reader)}`,
              files: handover.receivedFiles,
            },
          ]}
        />
        {handover.signature !== null && (
          <figure>
            <svg
              className="signature signature-done"
              role="img"
              aria-label="Signature of the receiver"
              viewBox={`0 0 ${SIGNATURE.width} ${SIGNATURE.height}`}
            >
              <path d={handover.signature} />
            </svg>
            <figcaption className="small">
              Signed by {handover.receivedByName ?? 'the receiver'}, without an account
            </figcaption>
          </figure>
        )}
        <hr className="perf perf-tight" />
        <p className="small soft">
          White leaf: {partyName(to, record)}. Blue leaf: {partyName(from, record)}.{' '}
          {handover.receivedAt === null
            ? `${atStart(partyName(from, record))} answers for it until it is received.`
            : 'This leaf can’t be altered; a later remark is a new leaf.'}
        </p>
        <JournalMark entity={handover.id} />
      </article>
    </div>
  )
}

/** On paper it never says *today*. */
const onLeaf = (at: Instant, reader: Reader): string =>
  `${day(at, reader)}, ${timeOfDay(at, reader)}`

const clock = (at: Handover['releasedAt'], reader: Reader): string =>
  at === null ? '' : `, ${timeOfDay(at, reader)}`

const receivedTitle = ({ state }: Handover): string =>
  state === 'refused' ? 'Refused by' : 'Received by'

function StateOf({ handover, reader }: Pick<SlipProps, 'handover' | 'reader'>) {
  const { state, receivedAt, outcome } = handover
  if (receivedAt !== null) {
    const refused = state === 'refused'
    return (
      <div className={`stamp ${refused ? 'stamp-oxide' : ''}`}>
        <b>{refused ? 'Refused' : 'Received'}</b>
        {outcome === 'accepted with remarks' && <span>with remarks</span>}
        <span className="n">{stampMoment(receivedAt, reader)}</span>
      </div>
    )
  }
  if (state === 'taken back') {
    return (
      <span className="state st-reopened">
        <i className="mark m-reopened" aria-hidden="true" />
        Taken back
      </span>
    )
  }
  return (
    <span className="state st-waiting">
      <i className="mark m-waiting" aria-hidden="true" />
      {state === 'prepared' ? 'To be released' : 'Released, not yet received'}
    </span>
  )
}

interface SideProps {
  readonly title: string
  readonly party: string
  readonly person: string | null
  readonly at: string | null
}

function Side({ title, party, person, at }: SideProps) {
  return (
    <section>
      <h3 className="small">{title}</h3>
      <p className="big">{party}</p>
      {person !== null && <p>{person}</p>}
      {at !== null && <p className="n">{at}</p>}
    </section>
  )
}

function Answers({ handover, record, reader, what }: SlipProps & { readonly what: string }) {
  const { state, receivedAt } = handover
  const holder = state === 'received' ? handover.to : handover.from
  const since =
    state === 'received' && receivedAt !== null
      ? ` from ${day(receivedAt, reader)}, ${timeOfDay(receivedAt, reader)}`
      : ''
  return (
    <p className={`answer ${state === 'received' ? 'answer-stamped' : ''}`}>
      <i className={`mark ${state === 'received' ? 'm-signed' : 'm-waiting'}`} aria-hidden="true" />
      <b>
        {atStart(partyName(holder, record))} {state === 'received' ? 'answers' : 'still answers'}{' '}
        for {what}
        {since}.
      </b>
    </p>
  )
}

/** As released beside as received: each thing, its count, its condition. */
function Compared({ handover, record, reader }: SlipProps) {
  const received = handover.receivedAt !== null
  const counted = handover.receivedPieces
  const pieces = piecesIn(handover, record)
  const differs = counted !== null && counted !== pieces
  return (
    <table className="table items">
      <thead>
        <tr>
          <th>What</th>
          <th>As released</th>
          <th>As received</th>
        </tr>
      </thead>
      <tbody>
        {handover.assemblies.map((id) => {
          const assembly = record.assemblies.rows.get(id)
          return (
            <tr key={id}>
              <td>
                <b>{assembly?.name ?? 'An assembly'}</b>
              </td>
              <td>
                {assembly === undefined || assembly.pieces === 1
                  ? '1 piece'
                  : `${assembly.pieces} pieces`}
              </td>
              <td>
                {received ? (handover.state === 'refused' ? 'not taken' : 'taken') : 'not yet'}
              </td>
            </tr>
          )
        })}
        <tr className={differs ? 'diff' : ''}>
          <td>
            <b>Count</b>
          </td>
          <td>{pieces === 1 ? '1 piece' : `${pieces} pieces`}</td>
          <td>
            {counted === null ? (
              received ? (
                'not counted'
              ) : (
                'not yet'
              )
            ) : (
              <>
                <i className={`mark ${differs ? 'm-refused' : 'm-met'}`} aria-hidden="true" />{' '}
                {new Intl.NumberFormat(reader.locale).format(counted)} counted
              </>
            )}
          </td>
        </tr>
        <tr className={handover.outcome !== null && handover.outcome !== 'accepted' ? 'diff' : ''}>
          <td>
            <b>Condition</b>
          </td>
          <td className="prose">{handover.condition || 'nothing said'}</td>
          <td className="prose">
            {!received
              ? 'not yet'
              : handover.outcome === 'accepted'
                ? (handover.remarks ?? '') || 'the same'
                : (handover.remarks ?? '') || handover.outcome}
          </td>
        </tr>
      </tbody>
    </table>
  )
}
