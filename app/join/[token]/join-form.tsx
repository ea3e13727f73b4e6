'use client'
import { useState } from 'react'
import * as z from 'zod/mini'
import { askServer, posting } from '@/app/_ui/door/ask-server.ts'
import { SHORTEST_PASSWORD } from '@/app/_ui/form/shortest-password.ts'
import { TextField } from '@/app/_ui/form/text-field.tsx'
import type { Joining } from '@/lib/command/wire-access.ts'

/** Takes an invitation: a password of one's own, and in. */
export function JoinForm({
  token,
  joining,
}: {
  readonly token: string
  readonly joining: Joining
}) {
  const [password, setPassword] = useState('')
  const [wrong, setWrong] = useState<string>()
  const [waiting, setWaiting] = useState(false)

  const join = async () => {
    if (password.length < SHORTEST_PASSWORD) {
      setWrong(`At least ${SHORTEST_PASSWORD} characters; several words do well.`)
      return
    }
    setWaiting(true)
    setWrong(undefined)
    const answer = await askServer(z.unknown(), `/api/join/${token}`, posting({ password }))
    if (answer.ok) {
      window.location.assign('/')
      return
    }
    setWaiting(false)
    setWrong(answer.message)
  }

  return (
    <form
      className="sheet stack"
      onSubmit={(event) => {
        event.preventDefault()
        void join()
      }}
    >
      <div className="head">
        <h2>Choose a password</h2>
      </div>
      <p>
        <b>{joining.name}</b>, {joining.email}. You join <b>{joining.to}</b>. If you have an account
        here under this address, give its password: you keep it.
      </p>
      <input type="hidden" autoComplete="username" value={joining.email} readOnly />
      <TextField
        label="Password"
        type="password"
        autoComplete="new-password"
        value={password}
        onChange={setPassword}
        wrong={wrong}
        hint={`At least ${SHORTEST_PASSWORD} characters.`}
        required
      />
      <button type="submit" className="btn btn-wide" disabled={waiting}>
        {waiting ? 'Joining…' : `Join ${joining.to}`}
      </button>
    </form>
  )
}
