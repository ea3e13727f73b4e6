import type { Role } from '../record/actor.ts'
import type { CommandName } from '../record/command-names.ts'

/** What clears a condition or answers others, and is for those alone who answer for their party. */
const MANAGERS: ReadonlySet<CommandName> = new Set<CommandName>([
  'assembly.fit',
  'assembly.takeOff',
  'changeOrder.approve',
  'changeOrder.raise',
  'changeOrder.send',
  'changeOrder.withdraw',
  'decision.choose',
  'slot.agree',
  'stage.confirm',
  'stage.reopen',
  'window.open',
])

/**
 * Whether a press is shown to somebody in that role of the party whose it is. The command's own `may` decides when it is
 * pressed; here a hand is told beforehand that a manager presses it.
 */
export const mayPress = (command: CommandName, role: Role): boolean =>
  role === 'hand' ? !MANAGERS.has(command) : role !== 'observer' && role !== 'guest'
