'use client'
import { type FormEvent, useEffect, useState } from 'react'
import * as z from 'zod/mini'
import { type Answer, askServer, posting } from '@/app/_ui/door/ask-server.ts'
import { HandedLink, LinkToHand } from '@/app/_ui/form/link-to-hand.tsx'
import { TextField } from '@/app/_ui/form/text-field.tsx'
import { Head } from '@/app/_ui/paper.tsx'
import { useShop } from '@/lib/live/shop-provider.tsx'
import { DeviceId, PersonId } from '@/lib/record/ids.ts'
import { Instant } from '@/lib/record/scalars.ts'
import { ago, timeOfDay } from '@/lib/words/dates.ts'
import type { Place } from '@/lib/words/reader.ts'
import { HandCodes } from './hand-codes.tsx'

const Phones = z.object({
  devices: z.array(
    z.object({
      id: DeviceId,
      name: z.string(),
      addedBy: z.string(),
      addedAt: Instant,
      lastSeenAt: z.nullable(Instant),
      isIn: z.boolean(),
    }),
  ),
  hands: z.array(
    z.object({
      person: PersonId,
      name: z.string(),
      hasCode: z.boolean(),
      setAt: z.nullable(Instant),
      onceUntil: z.nullable(Instant),
    }),
  ),
})
type Phones = z.infer<typeof Phones>
type Phone = Phones['devices'][number]

/** Phones that stay signed in for the shop, and the codes that its hands sign with on them. */
export function ShopPhones() {
  const { book, place } = useShop()
  const path = `/api/shops/${book.id}/devices`
  const [phones, setPhones] = useState<Answer<Phones>>()
  useEffect(() => {
    void askServer(Phones, path).then(setPhones)
  }, [path])
  const again = () => void askServer(Phones, path).then(setPhones)
  return (
    <>
      <section className="sheet stack" id="phones">
        <Head title="Phones of the shop" note={phones?.ok ? phones.data.devices.length : ''} />
        <p>
          A phone that lies on the bench stays signed in for the shop. Whoever works there takes it
          over with two taps; a signature takes their own code. It shows no money.
        </p>
        {phones === undefined && <p className="soft">Looking…</p>}
        {phones?.ok === false && (
          <p className="wrong" role="alert">
            {phones.message}{' '}
            <button type="button" className="btn btn-line" onClick={again}>
              Look again
            </button>
          </p>
        )}
        {phones?.ok && phones.data.devices.length === 0 && (
          <p className="soft">None yet. Name one below.</p>
        )}
        {phones?.ok && (
          <ul className="ruled">
            {phones.data.devices.map((phone) => (
              <PhoneRow key={phone.id} path={path} phone={phone} place={place} onChange={again} />
            ))}
          </ul>
        )}
        <NewPhone path={path} place={place} onChange={again} />
      </section>
      {phones?.ok && <HandCodes shop={book.id} hands={phones.data.hands} onChange={again} />}
    </>
  )
}

/** What was seen of a phone, in words. */
const seenWords = ({ isIn, lastSeenAt }: Phone, place: Place): string => {
  if (!isIn) return 'not brought in yet'
  return lastSeenAt === null ? 'not seen yet' : `seen ${ago(lastSeenAt, place)}`
}

function PhoneRow({
  path,
  phone,
  place,
  onChange,
}: {
  readonly path: string
  readonly phone: Phone
  readonly place: Place
  readonly onChange: () => void
}) {
  const [link, setLink] = useState<HandedLink>()
  const [wrong, setWrong] = useState<string>()
  const [waiting, setWaiting] = useState(false)
  const press = async (what: 'link' | 'revoke') => {
    setWaiting(true)
    setWrong(undefined)
    const at = `${path}/${phone.id}/${what}`
    if (what === 'link') {
      const answer = await askServer(HandedLink, at, posting({}))
      if (answer.ok) setLink(answer.data)
      else setWrong(answer.message)
    } else {
      const answer = await askServer(z.unknown(), at, posting({}))
      if (answer.ok) onChange()
      else setWrong(answer.message)
    }
    setWaiting(false)
  }
  return (
    <li className="stack tight">
      <p>
        <b>{phone.name}</b>
        <span className="small">
          {' '}
          · {seenWords(phone, place)} · by {phone.addedBy}
        </span>
      </p>
      {link !== undefined && (
        <LinkToHand
          link={link}
          says={`Opens on the phone that becomes ${phone.name}`}
          until={timeOfDay(link.expiresAt, place)}
        />
      )}
      <details>
        <summary>Bring in again, or take out</summary>
        <div className="stack tight">
          <button
            type="button"
            className="btn btn-line"
            disabled={waiting}
            onClick={() => void press('link')}
          >
            A link for {phone.name}
          </button>
          <p className="small">
            Opened on another phone, that one is {phone.name} from then on, and this one no longer.
          </p>
          <button
            type="button"
            className="btn btn-line"
            disabled={waiting}
            onClick={() => void press('revoke')}
          >
            Take {phone.name} out
          </button>
          <p className="small">
            It is out within a second, wherever it lies. What was pressed on it stays in the
            journal.
          </p>
        </div>
      </details>
      {wrong !== undefined && (
        <p className="wrong" role="alert">
          {wrong}
        </p>
      )}
    </li>
  )
}

function NewPhone({
  path,
  place,
  onChange,
}: {
  readonly path: string
  readonly place: Place
  readonly onChange: () => void
}) {
  const { book } = useShop()
  const [name, setName] = useState('')
  const [link, setLink] = useState<{ readonly link: HandedLink; readonly name: string }>()
  const [wrong, setWrong] = useState<string>()
  const [waiting, setWaiting] = useState(false)
  const make = async (here: boolean) => {
    const named = name.trim()
    if (named === '') {
      setWrong('Name it, as the shop calls it: Paint bay phone.')
      return
    }
    setWaiting(true)
    setWrong(undefined)
    const body = posting({ name: named, here })
    if (here) {
      const answer = await askServer(z.unknown(), path, body)
      // Nobody is signed in here any more: the day sheet comes as the shop's phone shows it.
      if (answer.ok) window.location.assign(`/shops/${book.id}`)
      else setWrong(answer.message)
    } else {
      const answer = await askServer(HandedLink, path, body)
      if (answer.ok) {
        setLink({ link: answer.data, name: named })
        setName('')
        onChange()
      } else setWrong(answer.message)
    }
    setWaiting(false)
  }
  const submit = (event: FormEvent) => {
    event.preventDefault()
    void make(false)
  }
  return (
    <form className="stack" noValidate onSubmit={submit}>
      <TextField
        label="Name of a phone"
        value={name}
        onChange={setName}
        wrong={wrong}
        hint="The journal says it with each press: Sil Harker, on Paint bay phone."
      />
      <button type="submit" className="btn btn-wide" disabled={waiting}>
        A link for another phone
      </button>
      {link !== undefined && (
        <LinkToHand
          link={link.link}
          says={`Opens on the phone that becomes ${link.name}`}
          until={timeOfDay(link.link.expiresAt, place)}
        />
      )}
      <details>
        <summary>Make this very phone the shop’s</summary>
        <div className="stack tight">
          <p>
            You are signed out here. From then on it shows the shop’s day sheet and its cars without
            money, whoever holds it, until a manager takes it out.
          </p>
          <button
            type="button"
            className="btn btn-line btn-wide"
            disabled={waiting}
            onClick={() => void make(true)}
          >
            Sign me out, it is the shop’s
          </button>
        </div>
      </details>
    </form>
  )
}
