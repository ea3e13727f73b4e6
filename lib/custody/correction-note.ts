import type { Context } from '../record/command.ts'
import type { Assembly, Note } from '../record/entities/things.ts'

/** The reason for a correction by hand, kept as a note on the assembly for everyone to see. */
export const correctionNote = (assembly: Assembly, text: string, ctx: Context): Note => ({
  kind: 'note',
  id: ctx.newId('nte'),
  project: assembly.project,
  on: assembly.id,
  type: 'note',
  sharing: 'shared',
  business: null,
  text,
  party: ctx.actor.party ?? assembly.custodian,
  person: ctx.actor.person,
  at: ctx.happenedAt,
  withdrawnAt: null,
})
