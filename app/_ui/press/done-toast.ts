'use client'
import { useToast } from '@/app/_ui/toast.tsx'
import { useCommand } from '@/lib/live/use-command.ts'
import type { CommandName } from '@/lib/record/command-names.ts'
import type { Json } from '@/lib/record/condition.ts'
import type { Entity, Kind } from '@/lib/record/entity.ts'
import { KEPT_WORDS } from './kept-words.ts'

/** The command that takes a press back; its input may need what the press made. Null: there is no way back from here. */
export interface Undo {
  readonly label: string
  readonly name: CommandName
  readonly input: Json | ((made: readonly Entity[]) => Json | null)
}

/** What is said when it is done, and the command that takes it back. */
export interface DoneWords {
  readonly text: string
  readonly undo?: Undo
}

/** Takes back what a press made, by its id in `field`; the record keeps why, where it asks. */
export const undoMade = (
  kind: Kind,
  field: string,
  { reason, ...undo }: Pick<Undo, 'label' | 'name'> & { readonly reason?: string },
): Undo => ({
  ...undo,
  input: (made) => {
    const one = made.find((entity) => entity.kind === kind)
    if (one === undefined) return null
    return { [field]: one.id, ...(reason === undefined ? {} : { reason }) }
  },
})

/** Says in the toast that it is done, with the press that takes it back. The button that did it may be gone by then. */
export function useDoneToast(done: DoneWords | undefined): (made: readonly Entity[]) => void {
  const toast = useToast()
  // Without a way back the name is never sent.
  const undo = useCommand(done?.undo?.name ?? 'stage.takeBack')
  const takeBack = async (input: Json) => {
    const { status } = await undo.send(input)
    if (status === 200) toast({ text: 'Taken back.' })
    else if (status === 'kept') toast(KEPT_WORDS)
    else toast({ mark: 'refused', text: 'It can’t be taken back from here. Nothing was changed.' })
  }
  return (made) => {
    if (done === undefined) return
    const back = done.undo
    const input = typeof back?.input === 'function' ? back.input(made) : (back?.input ?? null)
    toast({
      text: done.text,
      ...(back === undefined || input === null
        ? {}
        : { undo: { label: back.label, press: () => void takeBack(input) } }),
    })
  }
}
