'use client'
import { ReasonFold } from '@/app/_ui/form/reason-fold.tsx'
import { EmptyState, Head } from '@/app/_ui/paper.tsx'
import { CommandButton } from '@/app/_ui/press/command-button.tsx'
import { WordMark } from '@/app/_ui/state-mark.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { ToldMarks } from '@/app/p/[project]/stages/[stage]/told-marks.tsx'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { Assembly, Slot } from '@/lib/record/entities/things.ts'
import { all } from '@/lib/record/table.ts'
import { exactSpan } from '@/lib/words/dates.ts'
import { label } from '@/lib/words/labels.ts'
import { atStart, partyName } from '@/lib/words/names.ts'

/** Every claim and slot for an assembly, those to come first; the lead agrees, the claimant or the lead gives back. */
export function SlotList({ assembly }: { readonly assembly: Assembly }) {
  const { record, reader } = useDesk()
  const slots = all(record.slots).filter((slot) => slot.assembly === assembly.id)
  const open = slots
    .filter((slot) => slot.state !== 'released' && slot.to > reader.now)
    .toSorted((a, b) => a.from.localeCompare(b.from))
  const rest = slots
    .filter((slot) => !open.includes(slot))
    .toSorted((a, b) => b.from.localeCompare(a.from))
  return (
    <section className="sheet stack">
      <Head title="Slots" note={String(open.length)} />
      {open.length === 0 && <EmptyState title="No slot to come" />}
      <ul className="ruled">
        {open.map((slot) => (
          <SlotRow key={slot.id} slot={slot} />
        ))}
      </ul>
      {rest.length > 0 && (
        <details>
          <summary>Past and given back ({rest.length})</summary>
          <ul className="ruled">
            {rest.map((slot) => (
              <li key={slot.id} id={slot.id}>
                <p>
                  {exactSpan(slot.from, slot.to, reader)} · {partyName(slot.party, record, reader)}
                </p>
                {slot.state === 'released' && (
                  <p className="small soft">Given back: {slot.reason ?? 'no reason given'}</p>
                )}
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  )
}

function SlotRow({ slot }: { readonly slot: Slot }) {
  const { record, reader, standing } = useDesk()
  const { bays, shops } = useProject()
  const bay = bays.find(({ id }) => id === slot.bay)
  const host = all(record.parties).find((party) => party.shop === slot.shop)
  const releases =
    standing.actsFor(slot.party) ||
    standing.managesLead ||
    (host !== undefined && standing.managesFor(host.id))
  const asked = slot.state === 'asked'
  return (
    <li id={slot.id} className="stack tight">
      <div className="row spread">
        <div>
          <h3>{exactSpan(slot.from, slot.to, reader)}</h3>
          <p className="small">
            {atStart(partyName(slot.party, record, reader))} · {bay?.name ?? 'a bay'},{' '}
            {shops.find(({ id }) => id === slot.shop)?.name ?? 'a shop'}
          </p>
        </div>
        <WordMark mark={asked ? 'waiting' : 'met'} word={asked ? 'Asked' : 'Agreed'} />
      </div>
      <ToldMarks entity={slot.id} />
      {asked && standing.managesLead && (
        <CommandButton
          name="slot.agree"
          input={{ slot: slot.id }}
          wide
          done={{
            text: 'Agreed.',
            undo: {
              label: 'Give it back',
              name: 'slot.release',
              input: { slot: slot.id, reason: 'Agreed by mistake' },
            },
          }}
        >
          {label('slot.agree')}
        </CommandButton>
      )}
      {asked && !standing.managesLead && (
        <p className="small soft">The lead agrees to it, or gives it back with a reason.</p>
      )}
      {releases && <GiveBack slot={slot} />}
    </li>
  )
}

const GiveBack = ({ slot }: { readonly slot: Slot }) => (
  <ReasonFold
    name="slot.release"
    input={{ slot: slot.id }}
    label={label('slot.release')}
    summary={slot.state === 'asked' ? 'Take it off the list' : 'Give it back'}
    unsaid="Say why: whoever counted on it reads it."
    said="Given back."
  />
)
