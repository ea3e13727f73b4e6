import Link from 'next/link'
import { ReasonFold } from '@/app/_ui/form/reason-fold.tsx'
import { pathOf } from '@/app/_ui/paths.ts'
import { UnsentMark } from '@/app/_ui/unsent-mark.tsx'
import type { Desk } from '@/app/_ui/use-desk.ts'
import type { Layer } from '@/lib/coating/thickness.ts'
import { moment } from '@/lib/words/dates.ts'
import { label } from '@/lib/words/labels.ts'
import { counted } from '@/lib/words/money.ts'
import { atStart, partyName, personName, stageName } from '@/lib/words/names.ts'
import { coatTitle, keyedWords, microns } from '../coat-words.ts'

/** The layers of a stack in words, from metal outwards: what was recorded of each, and what wasn't. */
export function LayerList({
  layers,
  desk,
}: {
  readonly layers: readonly Layer[]
  readonly desk: Desk
}) {
  return (
    <ol className="ruled">
      {layers.map((layer, i) => (
        <LayerRow key={layer.coat.id} layer={layer} place={i + 1} desk={desk} />
      ))}
    </ol>
  )
}

function LayerRow({
  layer: { coat, microns: thick },
  place,
  desk: { record, reader, standing },
}: {
  readonly layer: Layer
  readonly place: number
  readonly desk: Desk
}) {
  const said = [
    coat.batch === null ? 'batch not recorded' : `batch ${coat.batch}`,
    coat.ratio === null ? null : `mixed ${coat.ratio}`,
    coat.thinner === null ? null : `thinner ${coat.thinner}`,
    counted(coat.coats, 'coat', 'coats', reader.locale),
    thick === null ? 'film not read' : microns(thick, reader),
  ].filter((part) => part !== null)
  const air = coat.air === null ? undefined : record.airReadings.rows.get(coat.air)
  const by = coat.by === null ? 'told by phone' : personName(coat.by, reader.people)
  const colourPath = coat.colour === null ? null : pathOf(record, coat.colour)
  return (
    <li className="stack tight" id={coat.id}>
      <h3>
        {place}. {coatTitle(coat, record)}
      </h3>
      <p>{said.join(' · ')}</p>
      <p>
        Last coat ended <b>{moment(coat.endedAt, reader)}</b>, {keyedWords(coat, reader)}.
      </p>
      {air !== undefined && (
        <p className="small">
          Air {air.air} °C, surface {air.surface} °C, {air.humidity} % humidity
        </p>
      )}
      {coat.sandedAt !== null && (
        <p className="small">
          <b>
            Sanded through to {coat.sandedTo}: {coat.sandedPlace}
          </b>
          , {moment(coat.sandedAt, reader)}
        </p>
      )}
      <p className="small soft">
        {atStart(partyName(coat.party, record, reader))}, {by}
        {coat.stage !== null && (
          <>
            {' · '}
            <Link prefetch={false} href={pathOf(record, coat.stage) ?? ''}>
              {stageName(coat.stage, record)}
            </Link>
          </>
        )}
      </p>
      {coat.remark !== '' && <p className="small">{coat.remark}</p>}
      {colourPath !== null && (
        <p>
          <Link className="row-link" prefetch={false} href={colourPath}>
            Its colour and formula
          </Link>
        </p>
      )}
      <UnsentMark entity={coat.id} />
      {standing.actsFor(coat.party) && (
        <ReasonFold
          name="coat.strip"
          input={{ assembly: coat.assembly, downTo: coat.id }}
          label={label('coat.strip')}
          summary="Taken off down to this layer"
          question="Why was it taken off?"
          said="What was over it is off."
        />
      )}
    </li>
  )
}
