'use client'
import { InviteForm } from '@/app/_ui/form/invite-form.tsx'
import { Head } from '@/app/_ui/paper.tsx'
import { CommandButton } from '@/app/_ui/press/command-button.tsx'
import { useShop } from '@/lib/live/shop-provider.tsx'
import type { Membership } from '@/lib/record/entities/people.ts'
import { all } from '@/lib/record/table.ts'
import { since } from '@/lib/words/dates.ts'
import { label } from '@/lib/words/labels.ts'
import { personName } from '@/lib/words/names.ts'

/** Who works in the shop, as manager or hand; its manager invites, changes and removes. */
export function ShopPeople() {
  const { book, role, place } = useShop()
  const members = all(book.memberships).filter(({ removedAt }) => removedAt === null)
  return (
    <div className="cols cols-2">
      <section className="sheet stack">
        <Head title="People of the shop" note={String(members.length)} />
        <ul className="ruled">
          {members.map((member) => (
            <MemberRow key={member.id} member={member} />
          ))}
        </ul>
      </section>
      {role === 'manager' && (
        <section className="sheet stack">
          <InviteForm into={{ shop: book.id }} place={place} open />
        </section>
      )}
    </div>
  )
}

function MemberRow({ member }: { readonly member: Membership }) {
  const { people, place, person, role } = useShop()
  const name = personName(member.person, people)
  const other = member.role === 'manager' ? 'hand' : 'manager'
  return (
    <li className="stack tight">
      <p>
        <b>{name}</b>
        <span className="small">
          {' '}
          · {member.role} · {since(member.since, place)}
          {member.person === person && ' · you'}
        </span>
      </p>
      {role === 'manager' && (
        <details>
          <summary>Change or remove</summary>
          <div className="stack tight">
            <CommandButton
              name="membership.change"
              input={{ membership: member.id, role: other }}
              line
              done={{
                text: `${name} is ${other} now.`,
                undo: {
                  label: 'Change it back',
                  name: 'membership.change',
                  input: { membership: member.id, role: member.role },
                },
              }}
            >
              Make {name} {other}
            </CommandButton>
            <CommandButton
              name="membership.remove"
              input={{ membership: member.id }}
              line
              done={{ text: `${name} is no longer in the shop.` }}
            >
              {label('membership.remove', { name })}
            </CommandButton>
            <p className="small">Their sessions here end within two seconds.</p>
          </div>
        </details>
      )}
    </li>
  )
}
