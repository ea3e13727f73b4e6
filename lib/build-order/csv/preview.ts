import type { PartyId } from '../../record/ids.ts'
import type { BuildOrderImport } from '../build-order-import.ts'
import type { ReadLine } from './read-lines.ts'
import type { Fault, Named } from './reading-fault.ts'

/** What a person sees before a build order is imported. */
export interface Preview {
  /** Headings that mean nothing here and are left aside. */
  readonly ignoredColumns: readonly string[]
  /** Everything that is wrong, by line and column. */
  readonly faults: readonly Fault[]
  /** Every line as it was read; those in `leftOut` are not in `input`. */
  readonly lines: readonly ReadLine[]
  /**
   * Lines that would not be imported: those with a fault, and those that wait for one of these, as they could begin too
   * early without it. `behind`: the line it waits for; null where the fault is its own.
   */
  readonly leftOut: readonly (Named & { readonly behind: number | null })[]
  /** Shops that are in no line of the record; each may be accepted as a new party. */
  readonly unknownShops: readonly {
    readonly name: string
    readonly nearest: string | null
    readonly lines: readonly number[]
  }[]
  /** Shops that were accepted as new parties. */
  readonly newParties: readonly string[]
  /** Assemblies that would be made, in whose custody, and the one that was meant if it is a slip of the pen. */
  readonly newAssemblies: readonly {
    readonly name: string
    readonly custodian: PartyId
    readonly nearest: string | null
    readonly lines: readonly number[]
  }[]
  /** Readings that nothing limits: they are kept and not judged. */
  readonly withoutLimits: readonly Named[]
  /** Input of `buildOrder.import` for the lines that are not left out; null where none is left. */
  readonly input: BuildOrderImport | null
}
