import type { ProjectCommand } from '../record/command.ts'
import type { ProjectCommandName } from '../record/command-names.ts'
import { coatingCommands } from './coating-commands.ts'
import { deskCommands } from './desk-commands.ts'
import { setUpCommands } from './set-up-commands.ts'
import { workCommands } from './work-commands.ts'

/** Every command on a project, by name. */
export const projectCommands = {
  ...workCommands,
  ...deskCommands,
  ...coatingCommands,
  ...setUpCommands,
} satisfies {
  readonly [Name in ProjectCommandName]: ProjectCommand<Name>
}
