import * as z from 'zod/mini'
import { managesFor, managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { AssemblyId } from '../record/ids.ts'
import { Line } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { Pieces } from './assembly-add.ts'
import { assemblyNameConditions } from './assembly-name.ts'

/** Changes an assembly's name, the count of a lot, or whether it holds fuel: the lead, or who answers for it now. */
export const assemblyDescribe = defineCommand({
  name: 'assembly.describe',
  input: z.strictObject({
    assembly: AssemblyId,
    name: z.optional(Line),
    pieces: z.optional(Pieces),
    holdsFuel: z.optional(z.boolean()),
  }),
  may: (actor, record, input) =>
    managesLead(actor, record) ||
    managesFor(actor, must(record.assemblies, input.assembly).custodian),
  decide(record, input) {
    const assembly = must(record.assemblies, input.assembly)
    const name = input.name ?? assembly.name
    const same = assemblyNameConditions(record, name, assembly.id)
    if (same.length > 0) return refusal(...same)
    return changes({
      ...assembly,
      name,
      pieces: input.pieces ?? assembly.pieces,
      holdsFuel: input.holdsFuel ?? assembly.holdsFuel,
    })
  },
})
