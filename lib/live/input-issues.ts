import type * as z from 'zod/mini'
import { projectCommands, shopCommands } from '../command/registry.ts'
import type { CommandName } from '../record/command-names.ts'
import type { Json } from '../record/condition.ts'
import { type InputIssue, inputIssues as issuesOf } from '../record/input-issue.ts'

const known: { readonly [name: string]: { readonly input: z.ZodMiniType } | undefined } = {
  ...projectCommands,
  ...shopCommands,
}

/** What is wrong with a command's input, by the same schema as on the server. Loaded after the first paint. */
export function inputIssues(name: CommandName, input: Json): readonly InputIssue[] {
  const parsed = known[name]?.input.safeParse(input)
  if (parsed === undefined || parsed.success) return []
  return issuesOf(parsed.error)
}
