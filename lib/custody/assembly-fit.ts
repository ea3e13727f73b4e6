import * as z from 'zod/mini'
import { managesFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { type Condition, plain, wrongInput } from '../record/condition.ts'
import type { Assembly } from '../record/entities/things.ts'
import { AssemblyId } from '../record/ids.ts'
import { Text } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { correctionNote } from './correction-note.ts'
import { withFitted } from './fitted.ts'
import { notInCustody } from './moving-conditions.ts'

const fittedAlready = (assembly: Assembly, host: AssemblyId): Condition => ({
  ...plain(assembly.id),
  rule: 'must-be-off',
  assembly: host,
  clearedBy: [assembly.custodian],
  clearedWith: { command: 'assembly.takeOff', input: { assembly: assembly.id } },
})

/**
 * Corrects by hand what an assembly is fitted to, with a reason; work does it by its stages. The custodian of both corrects.
 * Refuses what is fitted elsewhere, what is in other hands, and a thing fitted to itself, however far round.
 */
export const assemblyFit = defineCommand({
  name: 'assembly.fit',
  input: z.strictObject({ assembly: AssemblyId, host: AssemblyId, reason: Text }),
  may: (actor, record, input) =>
    managesFor(actor, must(record.assemblies, input.assembly).custodian),
  decide(record, input, ctx) {
    const assembly = must(record.assemblies, input.assembly)
    const host = must(record.assemblies, input.host)
    if (assembly.host !== null) return refusal(fittedAlready(assembly, assembly.host))
    if (withFitted(record, [assembly.id]).includes(host.id))
      return refusal(wrongInput(assembly.id, 'host', 'something that is not fitted to it'))
    if (host.custodian !== assembly.custodian)
      return refusal(notInCustody(host, assembly.custodian))
    return changes({ ...assembly, host: host.id }, correctionNote(assembly, input.reason, ctx))
  },
})
