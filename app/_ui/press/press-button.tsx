'use client'
import type { ReactNode } from 'react'
import { useToast } from '@/app/_ui/toast.tsx'
import { type CommandPress, type Through, useCommand } from '@/lib/live/use-command.ts'
import type { CommandName } from '@/lib/record/command-names.ts'
import type { Json } from '@/lib/record/condition.ts'
import type { Entity } from '@/lib/record/entity.ts'
import type { StageId } from '@/lib/record/ids.ts'
import { type DoneWords, useDoneToast } from './done-toast.ts'
import { KEPT_WORDS } from './kept-words.ts'
import { PressFace } from './press-face.tsx'

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
  const toast = useToast()
  const say = useDoneToast(done)
  const through = (how: Through, made: readonly Entity[]) => {
    if (how === 'kept') toast(KEPT_WORDS)
    else say(made)
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
