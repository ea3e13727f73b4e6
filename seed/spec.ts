import * as z from 'zod/mini'
import { CheckType } from '../lib/record/entities/work.ts'

const keys = z.array(z.string())

/** A stage of a demonstration car before its car exists: parties and assemblies by key. */
export const StageSpec = z.object({
  key: z.string(),
  group: z.string(),
  name: z.string(),
  party: z.string(),
  assemblies: keys,
  host: z.nullable(z.string()),
  fits: keys,
  removes: keys,
  needsFitted: keys,
  needsOff: keys,
  needsBay: z.boolean(),
  hours: z.tuple([z.number(), z.number(), z.number()]),
  after: z.array(
    z.object({ key: z.string(), least: z.number(), greatest: z.optional(z.number()) }),
  ),
  checks: z.array(
    z.object({
      name: z.string(),
      type: CheckType,
      unit: z.optional(z.string()),
      least: z.optional(z.number()),
      greatest: z.optional(z.number()),
    }),
  ),
  point: z.nullable(
    z.object({ point: z.enum(['hold', 'witness']), who: z.string(), name: z.string() }),
  ),
  caution: z.nullable(z.string()),
  safety: z.boolean(),
  handoverTo: z.nullable(z.string()),
})
export type StageSpec = Readonly<z.infer<typeof StageSpec>>

/** A stage that needs little said of it. */
export const plainStage = (
  key: string,
  party: string,
  name: string,
  over: Partial<StageSpec> = {},
): StageSpec => ({
  key,
  party,
  name,
  group: key.split('.')[0] ?? key,
  assemblies: [],
  host: null,
  fits: [],
  removes: [],
  needsFitted: [],
  needsOff: [],
  needsBay: false,
  hours: [4, 8, 14],
  after: [],
  checks: [],
  point: null,
  caution: null,
  safety: false,
  handoverTo: null,
  ...over,
})

/** A party of a demonstration car; `people` act for one without a shop book here. */
export interface PartySpec {
  readonly key: string
  readonly name: string
  readonly role: 'owner' | 'shop' | 'supplier' | 'observer'
  readonly shop?: string
  readonly bills?: 'owner' | 'lead'
  readonly people?: readonly string[]
}

/** An assembly, and what it is fitted to as the car comes. */
export interface AssemblySpec {
  readonly key: string
  readonly name: string
  readonly pieces?: number
  readonly host?: string
}

/** A car of the demonstration: who takes part, what it is made of, and its build order. */
export interface CarSpec {
  readonly name: string
  readonly year: number
  readonly description: string
  readonly lead: string
  readonly manager: string
  readonly owner: string
  readonly parties: readonly PartySpec[]
  readonly assemblies: readonly AssemblySpec[]
  readonly stages: readonly StageSpec[]
  /** When the project is begun; when the car comes from its owner. */
  readonly begun: string
  readonly comes: string
}
