'use client'
import { ReasonForm } from '@/app/_ui/form/reason-form.tsx'
import { Mark } from '@/app/_ui/mark.tsx'
import { fileAddress } from '@/app/_ui/photos.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { concessionsOf } from '@/lib/gate/indexes.ts'
import type { Concession, Stage } from '@/lib/record/entities/work.ts'
import { day } from '@/lib/words/dates.ts'
import { label } from '@/lib/words/labels.ts'
import { entityName, listed, partyName, personName } from '@/lib/words/names.ts'
import { ruleName } from '@/lib/words/rule-name.ts'

/** What was conceded on a stage: it stays on the card for good, in a dashed frame. */
export function Concessions({ stage }: { readonly stage: Stage }) {
  const { record } = useDesk()
  return concessionsOf(record.concessions, stage.id).map((concession) => (
    <Shim key={concession.id} concession={concession} />
  ))
}

function Shim({ concession }: { readonly concession: Concession }) {
  const { record, reader, standing } = useDesk()
  const missing = concession.needs.filter((party) => !concession.parties.includes(party))
  const by = listed(
    concession.parties.map((party) => partyName(party, record)),
    reader.locale,
  )
  return (
    <div className="shim stack tight" id={concession.id}>
      <p>
        <Mark name="conceded" /> <b>Conceded</b> by {by},{' '}
        {personName(concession.person, reader.people)}, {day(concession.at, reader)}:{' '}
        {ruleName(concession.rule)}, {entityName(concession.entity, record)}. “{concession.reason}”
        {missing.length === 0 ? ' Stays on the card.' : ''}
      </p>
      {concession.file !== null && (
        <p>
          <a className="btn btn-line btn-small" href={fileAddress(record.id, concession.file)}>
            Open the data sheet
          </a>
        </p>
      )}
      {missing.length > 0 && (
        <p>
          It counts once{' '}
          {listed(
            missing.map((party) => partyName(party, record, reader)),
            reader.locale,
          )}{' '}
          concedes it too.
        </p>
      )}
      {concession.parties.some((party) => standing.managesFor(party)) && (
        <ReasonForm
          name="concession.withdraw"
          input={{ concession: concession.id }}
          label={label('concession.withdraw')}
          question="Why it is withdrawn"
        />
      )}
    </div>
  )
}
