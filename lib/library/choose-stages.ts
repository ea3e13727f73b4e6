import type { Library, LibraryStage } from './library.ts'

/** How much of a car is restored. */
export const scopes = ['full', 'body', 'mechanical', 'trim'] as const
export type Scope = (typeof scopes)[number]

/** What is chosen of a library: its scope, and which of its options this car has. */
export interface Choice {
  readonly scope: Scope
  readonly options: readonly string[]
}

/** A link between two chosen stages. */
export interface ChosenLink {
  readonly from: string
  readonly to: string
  readonly least: number
  readonly greatest: number | null
  readonly why: string
}

/** What is left of a library once it was chosen from. */
export interface Chosen {
  readonly stages: readonly LibraryStage[]
  readonly links: readonly ChosenLink[]
  /** What was left out, and why. */
  readonly left: readonly { readonly name: string; readonly why: string }[]
}

/** Groups that every scope has: a car comes in, is agreed on, accounted for and handed over. */
const ALWAYS = ['arrival', 'snagging', 'money', 'book', 'handover']

const SCOPES: { readonly [S in Exclude<Scope, 'full'>]: (stage: LibraryStage) => boolean } = {
  body: ({ group, trade }) =>
    [
      ...ALWAYS,
      'strip',
      'blast',
      'metal',
      'epoxy',
      'filler',
      'highbuild',
      'colour',
      'sealer',
    ].includes(group) ||
    ['lacquer', 'wax'].includes(group) ||
    (group === 'assembly' && trade === 'body_paint'),
  mechanical: ({ group, trade }) =>
    [
      ...ALWAYS,
      'engine',
      'gearbox',
      'axle',
      'coating',
      'suspension',
      'steering',
      'brakes',
      'wheels',
    ].includes(group) ||
    ['fuel', 'cooling', 'first_start', 'road_test', 'inspection'].includes(group) ||
    (['strip', 'assembly'].includes(group) && ['mechanic', 'engine', 'gearbox'].includes(trade)),
  trim: ({ group, trade }) =>
    [...ALWAYS, 'trim_bench'].includes(group) ||
    (['strip', 'assembly'].includes(group) && ['trimmer', 'glazier'].includes(trade)),
}
const scopeWords: { readonly [S in Scope]: string } = {
  full: 'a full restoration',
  body: 'body and paint only',
  mechanical: 'mechanical work only',
  trim: 'trim only',
}

/** What keeps a stage out of a choice; null where it is in. */
function whyOut(stage: LibraryStage, { scope, options }: Choice): string | null {
  if (stage.option !== null && !options.includes(stage.option))
    return 'an option that this car has not'
  return scope === 'full' || SCOPES[scope](stage) ? null : `outside ${scopeWords[scope]}`
}

/**
 * The stages of a choice with the links between them. A stage that is left out hands what it waited for on to what waited for it, with its
 * own lags; where both were linked, the longer least lag and the shorter greatest lag hold. What must be fitted or off at a start and isn't
 * brought about by any chosen stage before it is left to people, and named.
 */
export function chooseStages(library: Library, choice: Choice): Chosen {
  const byKey = new Map(library.stages.map((stage) => [stage.key, stage]))
  const isIn = (key: string) => {
    const stage = byKey.get(key)
    return stage !== undefined && whyOut(stage, choice) === null
  }
  const left: { name: string; why: string }[] = []
  for (const stage of library.stages) {
    const why = whyOut(stage, choice)
    if (why !== null) left.push({ name: stage.name, why })
  }
  const chosen = library.stages.filter(({ key }) => isIn(key))
  const links = chosen.flatMap((stage) => linksInto(stage, byKey, isIn))
  const before = ancestorsOf(chosen, links)
  const stages = chosen.map((stage): LibraryStage => {
    const holds = (thing: string, wanted: 'on' | 'off') =>
      stateBefore(stage, thing, chosen, before) === wanted
    const fitted = stage.needs.fitted.filter((thing) => holds(thing, 'on'))
    const off = stage.needs.off.filter((thing) => holds(thing, 'off'))
    for (const [wanted, all, kept] of [
      ['fitted', stage.needs.fitted, fitted],
      ['off', stage.needs.off, off],
    ] as const)
      for (const thing of all)
        if (!kept.includes(thing))
          left.push({
            name: stage.name,
            why: `asks for ${thing.replaceAll('_', ' ')} ${wanted}: no chosen stage sees to it`,
          })
    return { ...stage, needs: { fitted, off } }
  })
  return { stages, links, left }
}

/** The links into a stage, over what is left out between. */
function linksInto(
  stage: LibraryStage,
  byKey: ReadonlyMap<string, LibraryStage>,
  isIn: (key: string) => boolean,
): ChosenLink[] {
  const found = new Map<string, ChosenLink>()
  const seen = new Set<string>()
  const follow = (of: LibraryStage) => {
    for (const { key, least_lag_hours: least, greatest_lag_hours: greatest, why } of of.after) {
      const before = byKey.get(key)
      if (before === undefined) continue
      if (!isIn(key)) {
        if (!seen.has(key)) {
          seen.add(key)
          follow(before)
        }
        continue
      }
      const known = found.get(key)
      const shortest = [known?.greatest, greatest].filter(
        (one) => one !== null && one !== undefined,
      )
      found.set(key, {
        from: key,
        to: stage.key,
        least: Math.max(known?.least ?? 0, least),
        greatest: shortest.length === 0 ? null : Math.min(...shortest),
        why: known?.why ?? why,
      })
    }
  }
  follow(stage)
  // A window that a longer cure has overtaken by being handed on is none.
  return [...found.values()].map((link) =>
    link.greatest !== null && link.greatest < link.least ? { ...link, greatest: null } : link,
  )
}

/** The stages before each stage, near and far. */
function ancestorsOf(
  stages: readonly LibraryStage[],
  links: readonly ChosenLink[],
): ReadonlyMap<string, ReadonlySet<string>> {
  const into = Map.groupBy(links, ({ to }) => to)
  const known = new Map<string, ReadonlySet<string>>()
  const of = (key: string): ReadonlySet<string> => {
    const there = known.get(key)
    if (there !== undefined) return there
    const found = new Set<string>()
    known.set(key, found)
    for (const { from } of into.get(key) ?? []) {
      found.add(from)
      for (const far of of(from)) found.add(far)
    }
    return found
  }
  for (const { key } of stages) of(key)
  return known
}

/** Whether a thing is on the car as a stage starts, by the chosen stages before it; a car comes in whole. */
function stateBefore(
  stage: LibraryStage,
  thing: string,
  stages: readonly LibraryStage[],
  before: ReadonlyMap<string, ReadonlySet<string>>,
): 'on' | 'off' {
  const moved = stages
    .filter(
      ({ key, fits, removes }) =>
        before.get(stage.key)?.has(key) === true &&
        (fits.includes(thing) || removes.includes(thing)),
    )
    .toSorted((a, b) => (before.get(a.key)?.size ?? 0) - (before.get(b.key)?.size ?? 0))
    .at(-1)
  return moved === undefined || moved.fits.includes(thing) ? 'on' : 'off'
}
