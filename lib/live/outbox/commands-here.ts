import { workCommands } from '../../command/work-commands.ts'
import type { ProjectCommand, ShopCommand } from '../../record/command.ts'

const onProject = new Map<string, ProjectCommand>(Object.entries(workCommands))
const onShop = new Map<string, ShopCommand>()

/** The rules of a command on a project, where this page has them. */
export const projectCommandHere = (name: string): ProjectCommand | undefined => onProject.get(name)

/** The rules of a command on a shop book, where this page has them. */
export const shopCommandHere = (name: string): ShopCommand | undefined => onShop.get(name)

/** Whether this page has the rules of that command. */
export const isHere = (name: string): boolean => onProject.has(name) || onShop.has(name)

let coming: Promise<void> | undefined

/** Fetches the rules of a command; those of the work are there from the first. @throws where they can't be had now */
export function fetchCommand(name: string): Promise<void> {
  if (isHere(name)) return Promise.resolve()
  coming ??= takeTheRest().catch((error: unknown) => {
    coming = undefined
    throw error
  })
  return coming
}

async function takeTheRest(): Promise<void> {
  const [{ setUpCommands, shopCommands }, { deskCommands }, { coatingCommands }] =
    await Promise.all([
      import('../../command/set-up-commands.ts'),
      import('../../command/desk-commands.ts'),
      import('../../command/coating-commands.ts'),
    ])
  const late = { ...setUpCommands, ...deskCommands, ...coatingCommands }
  for (const [name, command] of Object.entries(late)) onProject.set(name, command)
  for (const [name, command] of Object.entries(shopCommands)) onShop.set(name, command)
}
