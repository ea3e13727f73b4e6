'use client'
import { useState } from 'react'
import { signInWith } from '@/app/_ui/door/sign-in-with.ts'
import { TextField } from '@/app/_ui/form/text-field.tsx'

/** By e-mail address and password. */
export function SignInForm({ way }: { readonly way: string }) {
  const [email, setEmail] = useState('')
  const [password, setPassword] = useState('')
  const [wrong, setWrong] = useState<string>()
  const [waiting, setWaiting] = useState(false)

  const signIn = async () => {
    setWaiting(true)
    setWrong(undefined)
    const said = await signInWith('password', { email: email.trim(), password })
    if (said === null) {
      window.location.assign(way)
      return
    }
    setWaiting(false)
    setWrong(said)
  }

  return (
    <form
      className="sheet stack"
      onSubmit={(event) => {
        event.preventDefault()
        void signIn()
      }}
    >
      <div className="head">
        <h2>Sign in</h2>
      </div>
      <TextField
        label="E-mail address"
        type="email"
        inputMode="email"
        autoComplete="username"
        value={email}
        onChange={setEmail}
        required
      />
      <TextField
        label="Password"
        type="password"
        autoComplete="current-password"
        value={password}
        onChange={setPassword}
        wrong={wrong}
        required
      />
      <button type="submit" className="btn btn-wide" disabled={waiting}>
        {waiting ? 'Signing in…' : 'Sign in'}
      </button>
    </form>
  )
}
