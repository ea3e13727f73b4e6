'use client'
import { TickField } from '@/app/_ui/form/text-field.tsx'
import { Head } from '@/app/_ui/paper.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import type { Preview } from '@/lib/build-order/csv/preview.ts'
import { csvFault } from '@/lib/words/csv.ts'
import { partyName } from '@/lib/words/names.ts'

/** What the person accepted after the first look. */
export interface Accepted {
  readonly shops: readonly string[]
  readonly existing: boolean
}

/** Faults and lines beyond so many are counted, not listed: nobody mends five hundred by reading on. */
const SHOWN = 200

/** All that a file would bring, and all that is wrong in it, by line and column. */
export function PreviewSheet({
  name,
  preview,
  accept,
  onAccept,
}: {
  readonly name: string
  readonly preview: Preview
  readonly accept: Accepted
  readonly onAccept: (accept: Accepted) => void
}) {
  const { record, reader } = useDesk()
  const { faults, ignoredColumns, unknownShops, newAssemblies, newParties } = preview
  const exists = accept.existing || faults.some(({ what }) => what === 'exists')
  const offered = [...new Set([...unknownShops.map((shop) => shop.name), ...accept.shops])]
  return (
    <section className="sheet stack" aria-live="polite">
      <Head title={name} note={`${preview.lines.length} lines`} />
      {faults.length === 0 ? (
        <p>
          <i className="mark m-met" aria-hidden="true" /> <b>Nothing is wrong in it.</b>
        </p>
      ) : (
        <>
          <p>
            <i className="mark m-refused" aria-hidden="true" />{' '}
            <b>
              {faults.length === 1 ? 'One thing is wrong' : `${faults.length} things are wrong`} in
              it.
            </b>{' '}
            Mend the file and choose it again, or import the rest below.
          </p>
          <ol className="ruled">
            {faults.slice(0, SHOWN).map((fault) => {
              const { where, fact, wayOut } = csvFault(fault, reader.locale)
              return (
                <li key={`${where} ${fact}`}>
                  <p>
                    <b>{where}</b>: {fact}
                  </p>
                  {wayOut !== '' && <p className="small">{wayOut}</p>}
                </li>
              )
            })}
          </ol>
          {faults.length > SHOWN && <p className="small">and {faults.length - SHOWN} more</p>}
        </>
      )}
      {offered.length > 0 && (
        <fieldset className="picks">
          <legend>Shops that don’t take part yet: take them in as new parties?</legend>
          {offered.map((shop) => {
            const nearest = unknownShops.find((unknown) => unknown.name === shop)?.nearest ?? null
            return (
              <TickField
                key={shop}
                label={shop}
                {...(nearest === null
                  ? {}
                  : { hint: `Or did you mean ${nearest}? Then mend the file.` })}
                checked={accept.shops.includes(shop)}
                onChange={(on) =>
                  onAccept({
                    ...accept,
                    shops: on
                      ? [...accept.shops, shop]
                      : accept.shops.filter((other) => other !== shop),
                  })
                }
              />
            )
          })}
        </fieldset>
      )}
      {exists && (
        <TickField
          label="Take stages in whose name is in the record already"
          checked={accept.existing}
          onChange={(existing) => onAccept({ ...accept, existing })}
        />
      )}
      {ignoredColumns.length > 0 && (
        <p className="small">Left aside, as they mean nothing here: {ignoredColumns.join(', ')}.</p>
      )}
      {newParties.length > 0 && <p className="small">New parties: {newParties.join(', ')}.</p>}
      {newAssemblies.length > 0 && (
        <div className="small">
          <p>
            New assemblies, in the custody of{' '}
            {partyName(newAssemblies[0]?.custodian ?? null, record, reader)}:
          </p>
          <ul>
            {newAssemblies.map(({ name: assembly, nearest }) => (
              <li key={assembly}>
                {assembly}
                {nearest !== null && `; or did you mean ${nearest}?`}
              </li>
            ))}
          </ul>
        </div>
      )}
      {preview.withoutLimits.length > 0 && (
        <p className="small">
          Readings without limits, kept and not judged:{' '}
          {preview.withoutLimits
            .map(({ line, name: check }) => `${check} (line ${line})`)
            .join(', ')}
          .
        </p>
      )}
      {preview.leftOut.length > 0 && (
        <details>
          <summary>Lines that would be left out ({preview.leftOut.length})</summary>
          <ul className="ruled">
            {preview.leftOut.slice(0, SHOWN).map(({ line, name: stage, behind }) => (
              <li key={line}>
                {line} · {stage}
                <span className="small">
                  {behind === null ? ' · wrong itself' : ` · waits for line ${behind}`}
                </span>
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  )
}
