import * as z from 'zod/mini'
import { managesFor, managesLead, ownerOf } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { type Condition, wrongInput } from '../record/condition.ts'
import type { Project } from '../record/entities/people.ts'
import { proofConditions } from '../record/fresh-proof.ts'
import { Line, OptionalText } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { Year } from './project-create.ts'

const Allowed = z.nullable(z.int().check(z.minimum(0), z.maximum(100_000_000_000)).brand<'Minor'>())

const Input = z.strictObject({
  name: z.optional(Line),
  year: z.optional(z.nullable(Year)),
  description: z.optional(OptionalText),
  /** What the owner allows in advance, tax included: for one change, and for all together. */
  standingConsentEach: z.optional(Allowed),
  standingConsentTotal: z.optional(Allowed),
})
type Input = z.infer<typeof Input>

const touchesConsent = (input: Input): boolean =>
  input.standingConsentEach !== undefined || input.standingConsentTotal !== undefined
const touchesCar = (input: Input): boolean =>
  input.name !== undefined || input.year !== undefined || input.description !== undefined

function consentConditions(project: Project): Condition[] {
  const { id, standingConsentEach: each, standingConsentTotal: total } = project
  if (each === null && total === null) return []
  if (each === null)
    return [
      wrongInput(id, 'standingConsentEach', 'a sum for one change, where there is one for all'),
    ]
  if (total === null)
    return [wrongInput(id, 'standingConsentTotal', 'a sum for all, where there is one for each')]
  return each <= total
    ? []
    : [wrongInput(id, 'standingConsentTotal', 'no less than the sum for one change')]
}

/**
 * Describes the car (its lead), or says what is allowed in advance (its owner alone, with fresh proof of who they are).
 * Null takes a standing consent back; what was approved within it stays.
 */
export const projectDescribe = defineCommand({
  name: 'project.describe',
  input: Input,
  may(actor, record, input) {
    const owner = ownerOf(record)
    if (touchesConsent(input) && (owner === undefined || !managesFor(actor, owner.id))) return false
    if (touchesCar(input) && !managesLead(actor, record)) return false
    return touchesConsent(input) || managesLead(actor, record)
  },
  decide(record, input, ctx) {
    const project = must(record.projects, record.id)
    const described: Project = {
      ...project,
      name: input.name ?? project.name,
      year: input.year === undefined ? project.year : input.year,
      description: input.description ?? project.description,
    }
    if (!touchesConsent(input)) return changes(described)
    const { standingConsentEach: each, standingConsentTotal: total } = input
    const consented: Project = {
      ...described,
      standingConsentEach: each === undefined ? project.standingConsentEach : each,
      standingConsentTotal: total === undefined ? project.standingConsentTotal : total,
    }
    const unmet = [
      ...consentConditions(consented),
      ...proofConditions(project.id, ctx.actor, ctx.now),
    ]
    return unmet.length > 0 ? refusal(...unmet) : changes(consented)
  },
})
