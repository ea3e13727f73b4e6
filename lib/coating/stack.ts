import type { Coat, Ground } from '../record/entities/coating.ts'
import type { AssemblyId, StageId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import type { Instant } from '../record/scalars.ts'
import { indexBy, type Table } from '../record/table.ts'

const coatsOn = indexBy<Coat>((coat) => [coat.assembly])
const coatsBy = indexBy<Coat>((coat) => (coat.stage === null ? [] : [coat.stage]))

const byEnd = (a: Coat, b: Coat): number =>
  a.endedAt === b.endedAt ? 0 : a.endedAt < b.endedAt ? -1 : 1

/** Everything that ever lay on an assembly, from metal outwards, what was taken off again included. */
export const coatsOf = (record: ProjectRecord, assembly: AssemblyId): Coat[] =>
  [...coatsOn(record.coats, assembly)].sort(byEnd)

/** What lies on an assembly, from metal outwards: the last is what the next coat would go over. */
export const stackOf = (record: ProjectRecord, assembly: AssemblyId): Coat[] =>
  coatsOf(record, assembly).filter(({ offAt }) => offAt === null)

/** Since when the metal of an assembly is bare, its coats taken off; null where something lies on it or nothing was ever recorded. */
export function bareSince(record: ProjectRecord, assembly: AssemblyId): Instant | null {
  const coats = coatsOf(record, assembly)
  if (coats.some(({ offAt }) => offAt === null)) return null
  return coats.reduce<Instant | null>(
    (latest, { offAt }) => (offAt !== null && (latest === null || offAt > latest) ? offAt : latest),
    null,
  )
}

/** The end of the last coat that a stage laid, from which its windows count; null where none is recorded. */
export function endOfLastCoat(coats: Table<Coat>, stage: StageId): Instant | null {
  return coatsBy(coats, stage).reduce<Instant | null>(
    (latest, { endedAt }) => (latest === null || endedAt > latest ? endedAt : latest),
    null,
  )
}

/** Where a stack is sanded through and its own primer isn't on again, from metal outwards. */
export function sandedThrough(stack: readonly Coat[]): {
  readonly coat: Coat
  readonly at: Instant
  readonly to: Ground
  readonly place: string
}[] {
  return stack.flatMap((coat) => {
    const { sandedAt, sandedTo, sandedPlace } = coat
    if (sandedAt === null || sandedTo === null || sandedPlace === null) return []
    const primed = stack.some(
      ({ product, endedAt }) => endedAt > sandedAt && isPrimerOn(product, sandedTo),
    )
    return primed ? [] : [{ coat, at: sandedAt, to: sandedTo, place: sandedPlace }]
  })
}

/** Whether a product is what goes on first over bare metal or bare filler. */
export const isPrimerOn = (product: Coat['product'], ground: Ground): boolean =>
  product === 'epoxy' ||
  product === 'etch primer' ||
  product === 'rust converter' ||
  (ground !== 'bare metal' && (product === 'high build' || product === 'sprayed polyester'))
