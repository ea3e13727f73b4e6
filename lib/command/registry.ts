import type { ProjectCommand, ShopCommand } from '../record/command.ts'
import type { ProjectCommandName, ShopCommandName } from '../record/command-names.ts'

/** Every command on a project, by name. */
export const projectCommands = {} satisfies {
  readonly [Name in ProjectCommandName]?: ProjectCommand<Name>
}

/** Every command on a shop book, by name. */
export const shopCommands = {} satisfies { readonly [Name in ShopCommandName]?: ShopCommand<Name> }
