'use client'
import Link from 'next/link'
import { InviteForm } from '@/app/_ui/form/invite-form.tsx'
import { Head } from '@/app/_ui/paper.tsx'
import { CommandButton } from '@/app/_ui/press/command-button.tsx'
import { partiesHere, useDesk } from '@/app/_ui/use-desk.ts'
import type { Party } from '@/lib/record/entities/people.ts'
import { all } from '@/lib/record/table.ts'
import { since } from '@/lib/words/dates.ts'
import { label } from '@/lib/words/labels.ts'
import { personName } from '@/lib/words/names.ts'
import { InDate } from './in-date.tsx'

/** Who acts for each party, and invitations for those who don't yet. */
export function PeopleScreen() {
  const { record } = useDesk()
  return (
    <div className="cols cols-2">
      {partiesHere(record).map((party) => (
        <PartyPeople key={party.id} party={party} />
      ))}
    </div>
  )
}

function PartyPeople({ party }: { readonly party: Party }) {
  const { record, reader, standing } = useDesk()
  const people = all(record.participants).filter(
    (participant) => participant.party === party.id && participant.removedAt === null,
  )
  const manages = standing.managesLead || standing.managesFor(party.id)
  const hasBook = party.shop !== null
  const isOwn = standing.party === party.id
  return (
    <section className="sheet stack">
      <Head title={party.name} note={party.lead ? 'lead' : party.role} />
      {hasBook && (
        <p>
          {isOwn ? 'Your managers invite its people.' : 'Its own manager invites its people.'}
          {isOwn && (
            <>
              {' '}
              <Link href={`/shops/${party.shop}/people`}>People of the shop</Link>
            </>
          )}
        </p>
      )}
      {!hasBook && people.length === 0 && (
        <p className="soft">
          Nobody signs in for it yet.
          {party.role === 'shop' && ' The lead enters what it says by phone.'}
        </p>
      )}
      <InDate party={party.id} />
      {people.length > 0 && (
        <ul className="ruled">
          {people.map((participant) => (
            <li key={participant.id} className="stack tight">
              <p>
                <b>{personName(participant.person, reader.people)}</b>
                <span className="small"> · {since(participant.since, reader)}</span>
              </p>
              {manages && participant.person !== reader.person && (
                <details>
                  <summary>Remove from the project</summary>
                  <p className="small">
                    Their sessions end within two seconds. What they did stays theirs.
                  </p>
                  <CommandButton
                    name="participant.remove"
                    input={{ participant: participant.id }}
                    line
                    done={{ text: 'Removed.' }}
                  >
                    {label('participant.remove', {
                      name: personName(participant.person, reader.people),
                    })}
                  </CommandButton>
                </details>
              )}
            </li>
          ))}
        </ul>
      )}
      {/* A shop's book opens with its first invitation: the form that holds the link stays where it is. */}
      {manages && !(hasBook && isOwn) && (
        <InviteForm
          into={{ project: record.id, party: party.id }}
          place={reader}
          open={!hasBook && people.length === 0}
          summary={hasBook ? 'A new link, if nobody of it has come in yet' : 'Invite somebody'}
          hint={hintFor(party)}
        />
      )}
    </section>
  )
}

function hintFor(party: Party): string | undefined {
  if (party.shop !== null)
    return 'For its first manager, at the address that was invited. Once somebody of the shop has come in, its manager invites.'
  return party.role === 'shop'
    ? 'They become the shop’s first manager, and its book opens with them.'
    : undefined
}
