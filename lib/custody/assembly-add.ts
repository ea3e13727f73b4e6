import * as z from 'zod/mini'
import { managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongInput, wrongState } from '../record/condition.ts'
import type { Assembly } from '../record/entities/things.ts'
import { type AssemblyId, PartyId, type ProjectId } from '../record/ids.ts'
import { type Instant, Line } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { assemblyNameConditions } from './assembly-name.ts'

/** Pieces of a lot, or one. */
export const Pieces = z.int().check(z.minimum(1), z.maximum(100_000))

/** One piece, off the car, in the custody of that party. */
export const newAssembly = (
  id: AssemblyId,
  project: ProjectId,
  name: string,
  custodian: PartyId,
  since: Instant,
): Assembly => ({
  kind: 'assembly',
  id,
  project,
  name,
  pieces: 1,
  custodian,
  since,
  host: null,
  holdsFuel: false,
})

/** Puts an assembly in the record, in the custody of a party. Refuses a name that another one has. */
export const assemblyAdd = defineCommand({
  name: 'assembly.add',
  input: z.strictObject({ name: Line, pieces: z.optional(Pieces), custodian: PartyId }),
  may: (actor, record) => managesLead(actor, record),
  decide(record, input, ctx) {
    const custodian = must(record.parties, input.custodian)
    if (custodian.leftAt !== null)
      return refusal(wrongState(custodian.id, 'left', 'in the project'))
    if (custodian.role === 'observer')
      return refusal(wrongInput(custodian.id, 'custodian', 'somebody who works on the car'))
    const same = assemblyNameConditions(record, input.name, null)
    if (same.length > 0) return refusal(...same)
    const { name, pieces = 1 } = input
    const assembly = newAssembly(ctx.newId('asm'), record.id, name, custodian.id, ctx.happenedAt)
    return changes({ ...assembly, pieces })
  },
})
