import type { CommandName } from '../record/command-names.ts'
import type { Json } from '../record/condition.ts'

const has = (input: Json, field: string): boolean =>
  typeof input === 'object' && input !== null && field in input

/**
 * Whether a command is a yes within reach of the owner's authority: who gives it proves who they are, so it is never queued without
 * signal (DESIGN §6).
 */
export const needsProof = (name: CommandName, input: Json): boolean =>
  name === 'changeOrder.approve' ||
  (name === 'project.describe' &&
    (has(input, 'standingConsentEach') || has(input, 'standingConsentTotal')))
