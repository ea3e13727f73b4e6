import { type Condition, plain } from '../record/condition.ts'

/** A refusal of an input that is well formed and still can't be so; `why` reads after the field's name. */
export const badInput = (entity: string, field: string, why: string): Condition => ({
  ...plain(entity),
  rule: 'input',
  field,
  why,
})
