'use client'
import { useState } from 'react'
import * as z from 'zod/mini'
import { askServer, posting } from '@/app/_ui/door/ask-server.ts'
import { TextField } from '@/app/_ui/form/text-field.tsx'

/** By a link that comes by mail. What is answered never tells whether the address is known. */
export function MailLink({ way }: { readonly way: string }) {
  const [email, setEmail] = useState('')
  const [said, setSaid] = useState<string>()
  const [wrong, setWrong] = useState<string>()
  const [waiting, setWaiting] = useState(false)

  const ask = async () => {
    setWaiting(true)
    setWrong(undefined)
    const answer = await askServer(
      z.unknown(),
      '/api/magic-link',
      posting({ email: email.trim(), next: way }),
    )
    setWaiting(false)
    if (answer.ok)
      setSaid(`If ${email.trim()} is known here, a link is on its way. Open it on this device.`)
    else setWrong(answer.message)
  }

  return (
    <form
      className="sheet stack"
      onSubmit={(event) => {
        event.preventDefault()
        void ask()
      }}
    >
      <div className="head">
        <h2>By a link in the mail</h2>
      </div>
      <TextField
        label="E-mail address"
        type="email"
        inputMode="email"
        autoComplete="username"
        value={email}
        onChange={setEmail}
        wrong={wrong}
        required
      />
      <button type="submit" className="btn btn-line btn-wide" disabled={waiting}>
        {waiting ? 'Sending…' : 'Send me a link'}
      </button>
      <p aria-live="polite">{said}</p>
    </form>
  )
}
