import * as z from 'zod/mini'
import { managesFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { AssemblyId } from '../record/ids.ts'
import { Text } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { correctionNote } from './correction-note.ts'

/** Corrects by hand that an assembly is off what it was fitted to, with a reason. Its custodian does. */
export const assemblyTakeOff = defineCommand({
  name: 'assembly.takeOff',
  input: z.strictObject({ assembly: AssemblyId, reason: Text }),
  may: (actor, record, input) =>
    managesFor(actor, must(record.assemblies, input.assembly).custodian),
  decide(record, input, ctx) {
    const assembly = must(record.assemblies, input.assembly)
    if (assembly.host === null) return refusal(wrongState(assembly.id, 'off', 'fitted'))
    return changes({ ...assembly, host: null }, correctionNote(assembly, input.reason, ctx))
  },
})
