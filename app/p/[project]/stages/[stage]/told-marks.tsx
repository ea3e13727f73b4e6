'use client'
import { CommandButton } from '@/app/_ui/press/command-button.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { moment } from '@/lib/words/dates.ts'
import { label } from '@/lib/words/labels.ts'
import { partyName, personName } from '@/lib/words/names.ts'

/** What the lead entered as told by phone, until the party that told it confirms it. */
export function ToldMarks({ entity }: { readonly entity: string }) {
  const { record, reader, standing } = useDesk()
  const open = [...record.told.rows.values()].filter(
    (told) => told.entity === entity && told.confirmedAt === null,
  )
  return open.map((told) => (
    <div key={told.id} className="shim stack tight">
      <p>
        <b>Told by phone</b> by {partyName(told.party, record)}, entered by{' '}
        {personName(told.person, reader.people)}, {moment(told.at, reader)}. Not yet confirmed.
      </p>
      {standing.actsFor(told.party) && (
        <CommandButton name="told.confirm" input={{ told: told.id }} line>
          {label('told.confirm')}
        </CommandButton>
      )}
    </div>
  ))
}
