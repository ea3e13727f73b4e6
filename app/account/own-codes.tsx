'use client'
import { useEffect, useState } from 'react'
import * as z from 'zod/mini'
import { askServer, posting } from '@/app/_ui/door/ask-server.ts'
import { TextField } from '@/app/_ui/form/text-field.tsx'
import { Head } from '@/app/_ui/paper.tsx'
import { CODE_LEAST, CODE_MOST, codeFault } from '@/lib/record/code-fault.ts'
import { Instant } from '@/lib/record/scalars.ts'
import { codeFaultWords } from '@/lib/words/code-words.ts'

const Mine = z.array(
  z.object({
    shop: z.string(),
    shopName: z.string(),
    setAt: z.nullable(Instant),
    resetBy: z.nullable(z.string()),
    resetAt: z.nullable(Instant),
  }),
)
type Mine = z.infer<typeof Mine>

/** What a person signs with on their shops' phones; theirs alone. Nothing for who works in no shop. */
export function OwnCodes() {
  const [mine, setMine] = useState<Mine>([])
  useEffect(() => {
    void askServer(Mine, '/api/my-codes').then((answer) => answer.ok && setMine(answer.data))
  }, [])
  return mine.map((one) => <OwnCode key={one.shop} mine={one} onChange={setMine} />)
}

const day = (at: Instant): string =>
  new Date(at).toLocaleDateString('en-GB', { day: 'numeric', month: 'long' })

function OwnCode({
  mine,
  onChange,
}: {
  readonly mine: Mine[number]
  readonly onChange: (mine: Mine) => void
}) {
  const [code, setCode] = useState('')
  const [wrong, setWrong] = useState<string>()
  const [said, setSaid] = useState('')
  const [waiting, setWaiting] = useState(false)
  const set = async () => {
    const fault = codeFault(code)
    if (fault !== null) {
      setWrong(codeFaultWords[fault])
      return
    }
    setWaiting(true)
    setWrong(undefined)
    const answer = await askServer(Mine, `/api/my-codes/${mine.shop}`, posting({ code }))
    setWaiting(false)
    if (!answer.ok) {
      setWrong(answer.message)
      return
    }
    setCode('')
    setSaid('Set. You sign with it on the shop’s phones from now on.')
    onChange(answer.data)
  }
  const isReset = mine.setAt === null && mine.resetBy !== null && mine.resetAt !== null
  return (
    <section className="sheet stack">
      <Head title="Your code on the shop’s phones" note={mine.shopName} />
      <p>
        {mine.setAt === null
          ? 'None yet. You sign with it where a phone is the shop’s, not yours.'
          : `Set on ${day(mine.setAt)}. Nobody can read it; a manager can only take it away.`}
      </p>
      {isReset && mine.resetAt !== null && (
        <p className="small">
          {mine.resetBy} took the one before away on {day(mine.resetAt)}.
        </p>
      )}
      <form
        className="stack tight"
        noValidate
        onSubmit={(event) => {
          event.preventDefault()
          void set()
        }}
      >
        <TextField
          label={`A new code, ${CODE_LEAST} to ${CODE_MOST} digits`}
          type="password"
          inputMode="numeric"
          autoComplete="new-password"
          value={code}
          onChange={setCode}
          wrong={wrong}
        />
        <button type="submit" className="btn btn-wide" disabled={waiting}>
          {waiting ? 'Setting it…' : 'Set it'}
        </button>
        <p className="small" role="status">
          {said}
        </p>
      </form>
    </section>
  )
}
