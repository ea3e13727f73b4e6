import * as z from 'zod/mini'

/** A sum on its way from the bench to a stage: its figures, and all that makes them evidence. */
const WorkedSum = z.object({
  stage: z.string(),
  title: z.string(),
  figures: z.array(
    z.object({
      label: z.string(),
      value: z.nullable(z.number()),
      unit: z.string(),
      shown: z.string(),
    }),
  ),
  verdict: z.nullable(z.object({ passes: z.boolean(), words: z.string() })),
  entered: z.array(z.string()),
  working: z.array(z.string()),
  source: z.string(),
})
export type WorkedSum = Readonly<z.infer<typeof WorkedSum>>

const CARRIED = 'fettleyard worked sum'

/** Lays a worked sum down in this tab for the stage's screen. */
export const carry = (sum: WorkedSum): void => keepInTab(CARRIED, sum)

/** What was carried to that stage; null where nothing was. */
export function carriedTo(stage: string): WorkedSum | null {
  const read = WorkedSum.safeParse(keptInTab(CARRIED))
  return read.success && read.data.stage === stage ? read.data : null
}

/** It stands on its stage, or is to be left. */
export const letGoOfCarried = (): void => sessionStorage.removeItem(CARRIED)

/** Keeps something for as long as the tab is there. */
export function keepInTab(key: string, what: unknown): void {
  try {
    sessionStorage.setItem(key, JSON.stringify(what))
  } catch {
    // A window that keeps nothing: the sum is worked all the same.
  }
}

/** What was kept under that key in this tab; null where nothing was. */
export function keptInTab(key: string): unknown {
  try {
    return JSON.parse(sessionStorage.getItem(key) ?? 'null')
  } catch {
    return null
  }
}
