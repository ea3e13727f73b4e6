import type { CommandName } from '../record/command-names.ts'
import type { Json } from '../record/condition.ts'
import { type InputIssue, inputIssues as issuesOf } from '../record/input-issue.ts'
import { projectCommandHere, shopCommandHere } from './outbox/commands-here.ts'

/** What is wrong with a command's input, by the same schema as on the server; nothing where its rules aren't here. Loaded after the first paint. */
export function inputIssues(name: CommandName, input: Json): readonly InputIssue[] {
  const command = projectCommandHere(name) ?? shopCommandHere(name)
  const parsed = command?.input.safeParse(input)
  if (parsed === undefined || parsed.success) return []
  return issuesOf(parsed.error)
}
