import type { CommandAnswer } from '../../command/wire.ts'

/** Whether an answer asks for the hand's own code: none came, a wrong one, or this hand has none. Nothing was decided then. */
export const asksForCode = (
  outcome: CommandAnswer | { readonly status: 0 | 'kept' },
): outcome is Extract<CommandAnswer, { readonly status: 403 }> =>
  outcome.status === 403 &&
  (outcome.needs === 'code' || outcome.needs === 'right code' || outcome.needs === 'first code')
