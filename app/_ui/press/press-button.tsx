'use client'
import type { ReactNode } from 'react'
import { useToast } from '@/app/_ui/toast.tsx'
import { type CommandPress, type Through, useCommand } from '@/lib/live/use-command.ts'
import type { CommandName } from '@/lib/record/command-names.ts'
import type { Json } from '@/lib/record/condition.ts'
import type { StageId } from '@/lib/record/ids.ts'
import { KEPT_WORDS } from './kept-words.ts'
import { PressFace } from './press-face.tsx'

/** What is said when it is done, and the command that takes it back. */
export interface DoneWords {
  readonly text: string
  readonly undo?: { readonly label: string; readonly name: CommandName; readonly input: Json }
}

/** Says what came of a press. Handed down, since a refusal's conditions have presses of their own. */
export type ShowsOutcome = (shown: {
  readonly press: CommandPress
  readonly stage?: StageId | undefined
}) => ReactNode

/** What one button gives, and how it looks. */
export interface PressOf {
  readonly name: CommandName
  readonly input: Json
  readonly line?: boolean
  readonly wide?: boolean
  readonly small?: boolean
  readonly done?: DoneWords
  readonly stage?: StageId | undefined
  readonly children: ReactNode
}

/** A button that gives one command as it stands; what came of it stands under it. */
export function PressButton({
  name,
  input,
  line,
  wide,
  small,
  done,
  stage,
  children,
  outcome: Outcome,
}: PressOf & { readonly outcome: ShowsOutcome }) {
  const undo = useCommand(done?.undo?.name ?? 'stage.takeBack')
  const toast = useToast()
  // The button may be gone by then, so what became of it is said where the press was.
  const takeBack = async (back: Json) => {
    const { status } = await undo.send(back)
    if (status === 'kept') toast(KEPT_WORDS)
    else if (status !== 200)
      toast({ mark: 'refused', text: 'It can’t be taken back from here. Nothing was changed.' })
  }
  const through = (how: Through) => {
    if (how === 'kept') toast(KEPT_WORDS)
    if (how === 'kept' || done === undefined) return
    const back = done.undo
    toast({
      text: done.text,
      ...(back === undefined
        ? {}
        : { undo: { label: back.label, press: () => void takeBack(back.input) } }),
    })
  }
  const press = useCommand(name, through, input)
  return (
    <div className="stack tight">
      {/* Another command is another button: a live change never swaps what a thumb already lies on. */}
      <PressFace
        key={name}
        line={line}
        wide={wide}
        small={small}
        waiting={press.waiting}
        onPress={() => void press.send(input)}
      >
        {children}
      </PressFace>
      <Outcome press={press} stage={stage} />
    </div>
  )
}
