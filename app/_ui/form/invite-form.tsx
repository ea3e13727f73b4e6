'use client'
import { useState } from 'react'
import { askServer, posting } from '@/app/_ui/door/ask-server.ts'
import type { MembershipRole } from '@/lib/record/entities/people.ts'
import { moment } from '@/lib/words/dates.ts'
import type { Place } from '@/lib/words/reader.ts'
import { HandedLink, LinkToHand } from './link-to-hand.tsx'
import { SelectField, TextField } from './text-field.tsx'

type Into = { readonly shop: string } | { readonly project: string; readonly party: string }

/** Invites a person by name and address; gives a link and a QR code to hand over. The same address again gives a new link. */
export function InviteForm({
  into,
  place,
  hint,
  open = false,
  summary = 'Invite somebody',
}: {
  readonly into: Into
  readonly place: Place
  /** Unfolded from the first: where inviting is what the screen is for. */
  readonly open?: boolean
  readonly summary?: string
  readonly hint?: string | undefined
}) {
  const [name, setName] = useState('')
  const [email, setEmail] = useState('')
  const [role, setRole] = useState<string>('hand' satisfies MembershipRole)
  const [link, setLink] = useState<HandedLink & { readonly name: string }>()
  const [wrong, setWrong] = useState<{ readonly field: string; readonly message: string }>()
  const [waiting, setWaiting] = useState(false)
  // Whoever was just invited stands in the list at once; that mustn't fold the link away.
  const [unfolded, setUnfolded] = useState(open)

  const invite = async () => {
    if (name.trim() === '') return setWrong({ field: 'name', message: 'Give their name.' })
    if (!/^\S+@\S+\.\S+$/.test(email.trim()))
      return setWrong({
        field: 'email',
        message: 'Give their e-mail address, such as jo@shop.example.',
      })
    setWaiting(true)
    setWrong(undefined)
    const who = { name: name.trim(), email: email.trim() }
    const answer = await askServer(
      HandedLink,
      '/api/invitations',
      posting('shop' in into ? { ...who, ...into, role } : { ...who, ...into }),
    )
    setWaiting(false)
    if (!answer.ok) return setWrong(answer)
    setLink({ ...answer.data, name: who.name })
    setName('')
    setEmail('')
  }
  const at = (field: string) => (wrong?.field === field ? wrong.message : undefined)

  return (
    <details
      className="invite"
      open={unfolded}
      onToggle={(event) => setUnfolded(event.currentTarget.open)}
    >
      <summary>{summary}</summary>
      <form
        className="stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault()
          void invite()
        }}
      >
        <TextField label="Their name" value={name} onChange={setName} wrong={at('name')} />
        <TextField
          label="Their e-mail address"
          type="email"
          inputMode="email"
          value={email}
          onChange={setEmail}
          wrong={at('email')}
          hint="Again for somebody who lost the link: they get a new one."
        />
        {'shop' in into && (
          <SelectField
            label="As"
            value={role}
            onChange={setRole}
            options={[
              { value: 'hand', label: 'Hand: works and records; sees no money' },
              { value: 'manager', label: 'Manager: answers for the shop; sees its money' },
            ]}
          />
        )}
        {hint !== undefined && <p className="small">{hint}</p>}
        {wrong !== undefined && wrong.field !== 'name' && wrong.field !== 'email' && (
          <p className="wrong" role="alert">
            {wrong.message}
          </p>
        )}
        <button type="submit" className="btn btn-line btn-wide" disabled={waiting}>
          {waiting ? 'Inviting…' : 'Invite'}
        </button>
      </form>
      {link !== undefined && (
        <div className="stack tight" role="status">
          <p>
            <b>Hand this to {link.name}.</b>
          </p>
          <LinkToHand
            link={link}
            says={`QR code of the invitation for ${link.name}`}
            until={moment(link.expiresAt, place)}
          />
        </div>
      )}
    </details>
  )
}
