import type { Outcome } from '../lane/outcome.ts'
import { Refused } from './door.ts'

/** What to tell a person whose press on a form of ours came to nothing. */
export function refusedBy(outcome: Exclude<Outcome, { readonly is: 'done' }>): Error {
  switch (outcome.is) {
    case 'invalid': {
      const issue = outcome.issues[0]
      return new Refused(400, issue?.field ?? '', issue?.message ?? 'This can’t be read.')
    }
    case 'needs':
    case 'forbidden':
      return new Refused(
        403,
        '',
        'You may not do this here. A manager of the shop, or of the lead, can.',
      )
    case 'missing':
      return new Refused(404, '', 'There is nothing here that you may see.')
    case 'refused': {
      const condition = outcome.conditions[0]
      if (condition?.rule === 'input') return new Refused(409, condition.field, condition.why)
      return new Refused(409, '', 'The record stands against it as it is now. Look at it again.')
    }
    case 'key reused':
    case 'unavailable':
      return new Refused(
        409,
        '',
        'The database can’t be reached just now. Nothing was changed; try again.',
      )
  }
}
