import * as z from 'zod/mini'
import { managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { CheckType } from '../record/entities/work.ts'
import { AssemblyId, PartyId, PersonId, StageId } from '../record/ids.ts'
import { Hours, Line } from '../record/scalars.ts'
import { imported } from './imported.ts'
import { bookOf } from './named-person.ts'

/** What something new is called within one import; no id looks like it. */
const Key = z.string().check(z.regex(/^[a-z]+[0-9]{1,6}$/, 'a key such as line12'))
/** More stages than any car has; a file with more is another file. */
export const STAGES_AT_MOST = 20_000
const list = <T extends z.ZodMiniType>(of: T, atMost = STAGES_AT_MOST) =>
  z.array(of).check(z.maxLength(atMost))
const MANY = 10 * STAGES_AT_MOST
const PartyRef = z.union([PartyId, Key])
const hours = z.nullable(Hours)

/** A build order to be imported. References are ids of what is there, or keys of what comes with it. */
export const BuildOrderImport = z.object({
  /** New parties are shops that nobody signs in for yet. */
  parties: list(z.object({ key: Key, name: Line })),
  assemblies: list(z.object({ key: Key, name: Line, custodian: PartyRef })),
  stages: list(
    z.object({
      key: Key,
      name: Line,
      party: PartyRef,
      assemblies: list(z.union([AssemblyId, Key])),
      hoursLeast: hours,
      hoursLikely: hours,
      hoursMost: hours,
    }),
  ),
  links: list(
    z.object({
      from: z.union([StageId, Key]),
      to: Key,
      leastLagHours: Hours,
      greatestLagHours: z.nullable(Hours),
    }),
    MANY,
  ),
  checks: list(
    z.object({
      stage: Key,
      type: CheckType,
      name: Line,
      unit: z.nullable(Line),
      least: z.nullable(z.number()),
      greatest: z.nullable(z.number()),
    }),
    MANY,
  ),
  holds: list(
    z.object({
      stage: Key,
      point: z.enum(['hold', 'witness']),
      name: Line,
      party: PartyRef,
      person: z.nullable(PersonId),
    }),
    MANY,
  ),
  /** Stages whose name is in the record already come all the same. */
  acceptExisting: z.optional(z.boolean()),
})
export type BuildOrderImport = Readonly<z.infer<typeof BuildOrderImport>>

/**
 * Makes all the stages of a build order with their links, checks and holds, and the parties and assemblies that come
 * with them, or nothing: refuses with everything that is wrong. New stages are numbered after the highest.
 */
export const buildOrderImport = defineCommand({
  name: 'buildOrder.import',
  input: BuildOrderImport,
  may: (actor, record) => managesLead(actor, record),
  shops: (record, input) => [
    ...new Set(
      input.holds
        .filter((hold) => hold.person !== null)
        .flatMap((hold) => bookOf(record.parties.rows.get(hold.party))),
    ),
  ],
  decide(record, input, ctx) {
    const { entities, wrong } = imported(record, input, ctx)
    return wrong.length > 0 ? refusal(...wrong) : changes(...entities)
  },
})
