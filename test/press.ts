import type { Actor } from '../lib/record/actor.ts'
import type { Applied, Context, ProjectCommand } from '../lib/record/command.ts'
import type { ProjectRecord } from '../lib/record/project-record.ts'
import { projectAfter } from '../lib/record/project-record.ts'
import { aContext } from './builders.ts'

/** What a command answers when `actor` presses it on that record. */
export const press = (
  command: ProjectCommand,
  actor: Actor,
  record: ProjectRecord,
  input: unknown,
  over: Partial<Context> = {},
): Applied => command.apply(input, actor, record, aContext(actor, over))

/** The record after a press that must succeed. */
export function pressed(
  command: ProjectCommand,
  actor: Actor,
  record: ProjectRecord,
  input: unknown,
  over: Partial<Context> = {},
): ProjectRecord {
  const applied = press(command, actor, record, input, over)
  if (applied.outcome !== 'changes')
    throw new Error(`${command.name} was not done: ${JSON.stringify(applied)}`)
  return projectAfter(record, { version: record.version + 1, entities: applied.entities })
}
