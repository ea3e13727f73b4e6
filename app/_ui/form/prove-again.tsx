'use client'
import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import * as z from 'zod/mini'
import { askServer, posting } from '@/app/_ui/door/ask-server.ts'
import { signInWith } from '@/app/_ui/door/sign-in-with.ts'
import { useNow } from '@/lib/live/live-provider.tsx'
import { Instant } from '@/lib/record/scalars.ts'
import { TextField } from './text-field.tsx'

const Proved = z.object({
  person: z.object({ id: z.string() }),
  provedUntil: z.nullable(Instant),
  demo: z.boolean(),
})
type Proved = z.infer<typeof Proved>
const KEY = ['me', 'proof']

/** How fresh the proof is of who this person is. */
export interface ProofState {
  readonly fresh: boolean
  /** The person, where they are of the demonstration: they have no password, and prove it as they came in. */
  readonly demo: string | null
  readonly learn: (proved: Proved) => void
}

/** Asks the server until when the last proof counts. Until it has answered, it counts: the door judges anyway. */
export function useProof(): ProofState {
  const query = useQueryClient()
  const now = useNow()
  const { data } = useQuery({
    queryKey: KEY,
    queryFn: async () => {
      const answer = await askServer(Proved, '/api/me')
      return answer.ok ? answer.data : null
    },
  })
  const learn = (proved: Proved) => query.setQueryData(KEY, proved)
  if (data === undefined || data === null) return { fresh: true, demo: null, learn }
  const fresh = data.provedUntil !== null && data.provedUntil > now
  return { fresh, demo: data.demo ? data.person.id : null, learn }
}

/** The same person proves again who they are, by password; a demo person by one press. */
export function ProveAgain({
  proof,
  why,
  onProved,
}: {
  readonly proof: ProofState
  readonly why: string
  readonly onProved: () => void
}) {
  const [password, setPassword] = useState('')
  const [wrong, setWrong] = useState<string>()
  const [waiting, setWaiting] = useState(false)

  const prove = async () => {
    setWaiting(true)
    setWrong(undefined)
    const shut = proof.demo === null ? null : await signInWith('demo', { person: proof.demo })
    const answer = await (proof.demo === null
      ? askServer(Proved, '/api/prove', posting({ password }))
      : askServer(Proved, '/api/me'))
    setWaiting(false)
    if (shut !== null || !answer.ok) {
      setWrong(shut ?? (answer.ok ? undefined : answer.message))
      return
    }
    setPassword('')
    proof.learn(answer.data)
    onProved()
  }

  return (
    <form
      className="stack tight"
      onSubmit={(event) => {
        event.preventDefault()
        void prove()
      }}
    >
      <p>{why}</p>
      {proof.demo === null && (
        <TextField
          label="Your password"
          type="password"
          autoComplete="current-password"
          value={password}
          onChange={setPassword}
          wrong={wrong}
          required
        />
      )}
      {proof.demo !== null && wrong !== undefined && (
        <p className="wrong" role="alert">
          {wrong}
        </p>
      )}
      <button type="submit" className="btn btn-wide" disabled={waiting}>
        {waiting
          ? 'Looking…'
          : proof.demo
            ? 'Prove it, as the demonstration does'
            : 'Prove that it is me'}
      </button>
    </form>
  )
}
