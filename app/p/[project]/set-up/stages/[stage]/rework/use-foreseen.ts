'use client'
import { useDeferredValue, useMemo } from 'react'
import { actorOf } from '@/app/_ui/actor-of.ts'
import { setUpCommands } from '@/lib/command/set-up-commands.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import { effectOf } from '@/lib/plan/effect.ts'
import type { Condition, Json } from '@/lib/record/condition.ts'
import { CommandKey, idsFrom } from '@/lib/record/ids.ts'
import { projectAfter } from '@/lib/record/project-record.ts'
import { effectWords } from '@/lib/words/effect-words.ts'

/** What is tried leaves no trace, so its ids may be the same each time. */
const TRIED = CommandKey.parse('00000000-0000-7000-8000-000000000000')

/** What a press would do: sentences, or what would refuse it; null while it isn't whole. */
export type Foreseen =
  | { readonly is: 'effect'; readonly lines: readonly string[] }
  | { readonly is: 'refused'; readonly conditions: readonly Condition[] }
  | null

/** What a change of the build order would do to this record, by the rules that will decide it; nothing is sent. */
export function useForeseen(name: keyof typeof setUpCommands, input: Json | null): Foreseen {
  const { record, reader, shops } = useProject()
  const asked = useDeferredValue(input === null ? null : JSON.stringify(input))
  return useMemo(() => {
    if (asked === null) return null
    const actor = actorOf(reader)
    const { now } = reader
    const context = {
      actor,
      now,
      happenedAt: now,
      newId: idsFrom(TRIED),
      shops: new Map(),
      files: new Set<never>(),
    }
    try {
      const applied = setUpCommands[name].apply(JSON.parse(asked), actor, record, context)
      if (applied.outcome === 'refusal') return { is: 'refused', conditions: applied.conditions }
      if (applied.outcome !== 'changes') return null
      const after = projectAfter(record, { version: record.version, entities: applied.entities })
      return {
        is: 'effect',
        lines: effectWords(effectOf(record, after, shops, now), after, reader),
      }
    } catch {
      // It hangs on what this view may not see: the server will tell.
      return null
    }
  }, [asked, name, record, reader, shops])
}
