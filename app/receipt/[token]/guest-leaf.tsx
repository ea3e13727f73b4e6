import { Photos } from '@/app/_ui/photos.tsx'
import type { Receipt } from '@/lib/command/wire-access.ts'
import { SIGNATURE } from '@/lib/custody/signature.ts'
import type { Handover } from '@/lib/record/entities/things.ts'
import { moment, stampMoment } from '@/lib/words/dates.ts'
import type { Place } from '@/lib/words/reader.ts'

/** The leaf as a guest sees it: what, by whom, in what condition, how to treat it; after the receipt, its stamp. */
export function GuestLeaf({
  token,
  receipt,
  handover,
  place,
}: {
  readonly token: string
  readonly receipt: Receipt
  readonly handover: Handover
  readonly place: Place
}) {
  const { releasedAt, receivedAt, state } = handover
  return (
    <div className="pad">
      <article className="slip stack">
        <div className="row spread slip-top">
          <div>
            <p className="small">Handover</p>
            <h2 className="big title">{receipt.assemblies.map(({ name }) => name).join(', ')}</h2>
          </div>
          {receivedAt !== null && (
            <div className={`stamp stamp-new ${state === 'refused' ? 'stamp-oxide' : ''}`}>
              <b>{state === 'refused' ? 'Refused' : 'Received'}</b>
              {handover.outcome === 'accepted with remarks' && <span>with remarks</span>}
              <span className="n">{stampMoment(receivedAt, place)}</span>
            </div>
          )}
        </div>
        <div className="two">
          <section>
            <h3 className="small">Released by</h3>
            <p className="big">{receipt.from}</p>
            {releasedAt !== null && <p className="n">{stampMoment(releasedAt, place)}</p>}
          </section>
          <section>
            <h3 className="small">{state === 'refused' ? 'Refused by' : 'Received by'}</h3>
            <p className="big">{receipt.to}</p>
            {handover.receivedByName !== null && <p>{handover.receivedByName}</p>}
            {receivedAt !== null && <p className="n">{stampMoment(receivedAt, place)}</p>}
          </section>
        </div>
        <table className="table">
          <thead>
            <tr>
              <th>What</th>
              <th className="r">Pieces</th>
            </tr>
          </thead>
          <tbody>
            {receipt.assemblies.map((assembly) => (
              <tr key={assembly.id}>
                <td>
                  <b>{assembly.name}</b>
                </td>
                <td className="r">{assembly.pieces}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <div>
          <h3>Condition, as released</h3>
          <p className="prose">{handover.condition || 'Nothing said.'}</p>
        </div>
        <Photos
          project={handover.project}
          folder={`/api/receipts/${token}/files`}
          groups={[
            { title: 'As released', files: handover.files },
            { title: 'As received', files: handover.receivedFiles },
          ]}
        />
        {handover.care !== '' && (
          <div>
            <h3>How to treat it</h3>
            <p className="prose">{handover.care}</p>
          </div>
        )}
        {handover.receivedPieces !== null && (
          <p>
            <b>{handover.receivedPieces} counted</b> on receipt.
          </p>
        )}
        {handover.remarks !== null && handover.remarks !== '' && (
          <div>
            <h3>Remarks on receipt</h3>
            <p className="prose">“{handover.remarks}”</p>
          </div>
        )}
        {handover.signature !== null && (
          <svg
            className="signature signature-done"
            role="img"
            aria-label={`Signature of ${handover.receivedByName ?? 'the receiver'}`}
            viewBox={`0 0 ${SIGNATURE.width} ${SIGNATURE.height}`}
          >
            <path d={handover.signature} />
          </svg>
        )}
        <hr className="perf perf-tight" />
        <p className="small soft">
          {receivedAt === null
            ? `${receipt.from} answers for it until it is received. This link is good until ${moment(receipt.expiresAt, place)}.`
            : 'This leaf can’t be altered.'}
        </p>
      </article>
    </div>
  )
}
