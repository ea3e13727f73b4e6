'use client'
import { type DoneWords, useDoneToast } from '@/app/_ui/press/done-toast.ts'
import { KEPT_WORDS } from '@/app/_ui/press/kept-words.ts'
import { useToast } from '@/app/_ui/toast.tsx'
import type { About } from '@/lib/live/outbox/press-of.ts'
import { type CommandPress, useCommand } from '@/lib/live/use-command.ts'
import type { CommandName } from '@/lib/record/command-names.ts'
import type { Json } from '@/lib/record/condition.ts'

/** A command's press as forms use it: its fields' faults by name, and whether it went through. */
export interface Press {
  readonly command: CommandPress
  readonly waiting: boolean
  /** True when it was done, or is safe on this phone. What was typed stays with the form either way. */
  readonly send: (input: Json) => Promise<boolean>
  /** What is wrong with one field of the input; nothing where all is well. */
  readonly wrong: (field: string) => string | undefined
}

/** The press of one command; `said` is shown in the toast when it is done, with its way back if it has one; `about` tells it from others of its kind on the screen. */
export function usePress(name: CommandName, said?: string | DoneWords, about?: About): Press {
  const say = useDoneToast(typeof said === 'string' ? { text: said } : said)
  const toast = useToast()
  const command = useCommand(
    name,
    (how, made) => {
      if (how === 'done') say(made)
      else toast(KEPT_WORDS)
    },
    about,
  )
  return {
    command,
    waiting: command.waiting,
    send: async (input) => {
      const { status } = await command.send(input)
      return status === 200 || status === 'kept'
    },
    wrong: (field) =>
      command.issues.find((issue) => issue.field === field)?.message ??
      command.refused.flatMap((condition) =>
        condition.rule === 'input' && condition.field === field ? [condition.why] : [],
      )[0],
  }
}
