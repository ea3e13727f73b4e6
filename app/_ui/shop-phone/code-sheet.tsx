'use client'
import { useState } from 'react'
import * as z from 'zod/mini'
import { askServer, posting } from '@/app/_ui/door/ask-server.ts'
import { CodePad } from '@/app/_ui/form/code-pad.tsx'
import { TextField } from '@/app/_ui/form/text-field.tsx'
import type { DeviceHand } from '@/lib/command/wire-device.ts'
import { learnShopPhone } from '@/lib/live/shop-phone/shop-phone.ts'
import { CODE_LEAST, CODE_MOST, codeFault } from '@/lib/record/code-fault.ts'
import type { CommandName } from '@/lib/record/command-names.ts'
import { codeFaultWords } from '@/lib/words/code-words.ts'
import { label } from '@/lib/words/labels.ts'
import { FootDialog } from './foot-dialog.tsx'

/** A hand signs with their own code. Who has none yet sets it here, with one that a manager shows. */
export function CodeSheet({
  hand,
  command,
  wrong,
  onAnswer,
}: {
  readonly hand: DeviceHand
  readonly command: CommandName
  readonly wrong: string | null
  readonly onAnswer: (code: string | null) => void
}) {
  const [code, setCode] = useState('')
  const title = hand.hasCode ? `${hand.name} signs` : `${hand.name}: a code of your own`
  return (
    <FootDialog title={title} letBe="Don’t sign" onClose={() => onAnswer(null)}>
      {hand.hasCode ? (
        <CodePad
          label={`Your own code, ${hand.name}`}
          value={code}
          onChange={setCode}
          onEnter={onAnswer}
          press={label(command)}
          least={CODE_LEAST}
          most={CODE_MOST}
          wrong={wrong ?? undefined}
          hint="It goes with this signature only; the phone keeps none."
        />
      ) : (
        <FirstCode hand={hand} onSet={onAnswer} />
      )}
    </FootDialog>
  )
}

function FirstCode({
  hand: { person },
  onSet,
}: {
  readonly hand: DeviceHand
  readonly onSet: (code: string) => void
}) {
  const [once, setOnce] = useState('')
  const [code, setCode] = useState('')
  const [wrong, setWrong] = useState<{ readonly field: string; readonly message: string }>()
  const [waiting, setWaiting] = useState(false)
  const fault = codeFault(code)
  const set = async () => {
    if (once.trim() === '') {
      setWrong({ field: 'once', message: 'Six figures: a manager makes them under People.' })
      return
    }
    if (fault !== null) {
      setWrong({ field: 'code', message: codeFaultWords[fault] })
      return
    }
    setWaiting(true)
    setWrong(undefined)
    const answer = await askServer(
      z.unknown(),
      '/api/device/code',
      posting({ person, once: once.trim(), code }),
    )
    setWaiting(false)
    if (!answer.ok) {
      setWrong(answer)
      return
    }
    learnShopPhone(answer.data)
    onSet(code)
  }
  const said = (field: string) => (wrong?.field === field ? wrong.message : undefined)
  return (
    <form
      className="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        void set()
      }}
    >
      <p>
        Ask a manager of the shop for a code that works once. Or set your own under your account, on
        your own phone.
      </p>
      <TextField
        label="The manager’s code, six figures"
        inputMode="numeric"
        value={once}
        onChange={setOnce}
        wrong={said('once') ?? said('')}
      />
      <TextField
        label={`Your own code, ${CODE_LEAST} to ${CODE_MOST} digits`}
        type="password"
        inputMode="numeric"
        autoComplete="new-password"
        value={code}
        onChange={setCode}
        wrong={said('code')}
      />
      <button type="submit" className="btn btn-wide" aria-busy={waiting} disabled={waiting}>
        {waiting ? 'Setting it…' : 'Set my code and sign'}
      </button>
    </form>
  )
}
