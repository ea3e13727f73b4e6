import { filmPoints } from '../../coating/film-map.ts'
import {
  BARE_STEEL_HOURS,
  LACQUER_CURE_HOURS,
  LACQUER_LEAST_MICRONS,
  type OverRule,
  rulesOver,
} from '../../coating/over-what.ts'
import { bareSince, isPrimerOn, sandedThrough, stackOf } from '../../coating/stack.ts'
import type { Clearing } from '../../record/condition.ts'
import type { Coat, CoatKind } from '../../record/entities/coating.ts'
import type { Link, Stage } from '../../record/entities/work.ts'
import type { AssemblyId } from '../../record/ids.ts'
import type { ProjectRecord } from '../../record/project-record.ts'
import type { Instant } from '../../record/scalars.ts'
import { hoursAfter } from '../hours-after.ts'
import { linksFrom, stagesOn } from '../indexes.ts'
import { overSince } from '../over-since.ts'
import { type GateRule, met, type Requirement, unmet } from '../rule.ts'

/**
 * What lies on an assembly bears what the stage lays, and flatting leaves enough of it (FACTS B1, B3–B11). Where nothing was ever recorded nothing is
 * judged. All of it is conceded with the maker's data sheet only.
 */
export const coating: GateRule = (record, stage, at) =>
  stage.assemblies.flatMap((assembly) => [
    ...(stage.lays === null ? [] : layingOn(record, stage, stage.lays, assembly, at)),
    ...(stage.flats === null ? [] : flatting(record, stage, stage.flats, assembly, at)),
  ])

/** The part of every condition of this rule that is the same. */
const base = (stage: Stage, entity: string) => ({
  entity,
  root: entity,
  concedable: !stage.safety,
  clearedBy: [stage.party],
})

function layingOn(
  record: ProjectRecord,
  stage: Stage,
  lays: CoatKind,
  assembly: AssemblyId,
  at: Instant,
): Requirement[] {
  const stack = stackOf(record, assembly)
  const top = stack.at(-1)
  if (top === undefined) return onBareMetal(record, stage, lays, assembly, at)
  const through = sandedThrough(stack)
    .filter(({ to }) => !isPrimerOn(lays, to))
    .map(({ coat, at: since, to, place }) =>
      unmet({
        ...base(stage, coat.id),
        rule: 'sanded-through',
        since,
        clearedWith: { command: 'coat.record', input: { assembly, product: 'epoxy' } },
        assembly,
        to,
        place,
      }),
    )
  const over = rulesOver(lays, top.product).map((rule) =>
    judged(record, stage, lays, top, rule, at),
  )
  return [...through, ...(over.length === 0 ? [met('coat-over', top.id)] : over)]
}

/** Stripped metal: its own primer first, and in the same shift. */
function onBareMetal(
  record: ProjectRecord,
  stage: Stage,
  lays: CoatKind,
  assembly: AssemblyId,
  at: Instant,
): Requirement[] {
  const since = bareSince(record, assembly)
  if (since === null) return []
  const [rule] = rulesOver(lays, 'bare metal')
  if (rule !== undefined)
    return [
      unmet({
        ...base(stage, assembly),
        rule: 'coat-over',
        since,
        clearedWith: { command: 'coat.record', input: { assembly, product: 'epoxy' } },
        assembly,
        over: 'bare metal',
        lays,
        fact: rule.fact,
        why: rule.why,
        ranOutAt: null,
        opensAt: null,
      }),
    ]
  const ranOutAt = hoursAfter(keyedAfter(record, assembly, since) ?? since, BARE_STEEL_HOURS)
  if (at <= ranOutAt) return [met('bare-metal', assembly)]
  return [
    unmet({
      ...base(stage, assembly),
      rule: 'bare-metal',
      since: ranOutAt,
      clearedWith: keying(stage, null),
      assembly,
      ranOutAt,
    }),
  ]
}

/** One row of the table against what lies on top. */
function judged(
  record: ProjectRecord,
  stage: Stage,
  lays: CoatKind,
  top: Coat,
  rule: OverRule,
  at: Instant,
): Requirement {
  const says = (over: {
    readonly clearedWith: Clearing | null
    readonly since: Instant | null
    readonly ranOutAt?: Instant | null
    readonly opensAt?: Instant
  }) =>
    unmet({
      ...base(stage, top.id),
      rule: 'coat-over',
      assembly: top.assembly,
      over: top.product,
      lays,
      fact: rule.fact,
      why: rule.why,
      ranOutAt: null,
      opensAt: null,
      ...over,
    })
  const onTop = (product: CoatKind): Clearing => ({
    command: 'coat.record',
    input: { assembly: top.assembly, product },
  })
  switch (rule.why) {
    case 'not over it': {
      const under = stackOf(record, top.assembly).at(-2)?.id ?? null
      const clearedWith = {
        command: 'coat.strip',
        input: { assembly: top.assembly, downTo: under },
      } as const
      return says({ since: top.endedAt, clearedWith })
    }
    case 'isolator first':
      return says({ since: top.endedAt, clearedWith: onTop('isolator') })
    case 'primer first':
      return says({ since: top.endedAt, clearedWith: onTop('epoxy') })
    default:
      break
  }
  const window = windowAfter(record, top, stage)
  // A window on the link between the two is judged, named and cleared by the rule of greatest lags.
  if (window.direct !== null) return met('coat-over', top.id)
  const opensAt = hoursAfter(top.endedAt, window.least ?? rule.leastHours ?? 0)
  if (at < opensAt) return says({ since: top.endedAt, clearedWith: null, opensAt })
  const hours = window.greatest ?? rule.greatestHours ?? null
  const ranOutAt = hours === null ? null : hoursAfter(top.endedAt, hours)
  if (ranOutAt !== null && at <= ranOutAt) return met('coat-over', top.id)
  const keyed = keyedAfter(record, top.assembly, top.endedAt) !== null
  if (keyed && rule.why === 'window or keyed') return met('coat-over', top.id)
  return says({
    since: ranOutAt ?? top.endedAt,
    ranOutAt,
    clearedWith: keyed ? onTop(top.product) : keying(stage, window.link),
  })
}

/** Keying put into the link that carries the window, else a keying stage of its own. */
const keying = (stage: Stage, link: Link | null): Clearing =>
  link === null
    ? {
        command: 'stage.add',
        input: { party: stage.party, assemblies: stage.assemblies, keys: true },
      }
    : { command: 'stage.insertKeying', input: { link: link.id } }

interface Window {
  /** A window on the link from the stage that laid it to this one. */
  readonly direct: Link | null
  /** Any link from that stage which carries its window, and its hours. */
  readonly link: Link | null
  readonly greatest: number | null
  /** Hours before which this stage may not follow, where its own link says so: then that rule judges it. */
  readonly least: number | null
}

function windowAfter(record: ProjectRecord, coat: Coat, stage: Stage): Window {
  const links = coat.stage === null ? [] : linksFrom(record.links, coat.stage)
  const own = links.find(({ to }) => to === stage.id)
  const windowed = links.find(({ greatestLagHours }) => greatestLagHours !== null)
  return {
    direct: own !== undefined && own.greatestLagHours !== null ? own : null,
    link: windowed ?? null,
    greatest: windowed?.greatestLagHours ?? null,
    least: own !== undefined && own.leastLagHours > 0 ? 0 : null,
  }
}

/** When an assembly was last keyed after that moment; null where it wasn't. */
function keyedAfter(record: ProjectRecord, assembly: AssemblyId, after: Instant): Instant | null {
  return stagesOn(record.stages, assembly).reduce<Instant | null>((latest, other) => {
    const end = other.keys && other.removedAt === null ? overSince(other) : null
    return end !== null && end >= after && (latest === null || end > latest) ? end : latest
  }, null)
}

function flatting(
  record: ProjectRecord,
  stage: Stage,
  flats: number,
  assembly: AssemblyId,
  at: Instant,
): Requirement[] {
  const lacquer = stackOf(record, assembly).findLast(({ product }) => product === 'lacquer')
  if (lacquer === undefined) return []
  return [cured(record, stage, lacquer, at), filmLeft(record, stage, flats, lacquer)]
}

function cured(record: ProjectRecord, stage: Stage, lacquer: Coat, at: Instant): Requirement {
  const { least } = windowAfter(record, lacquer, stage)
  const until = hoursAfter(lacquer.endedAt, least ?? LACQUER_CURE_HOURS)
  if (at >= until) return met('lacquer-cure', lacquer.id)
  return unmet({
    ...base(stage, lacquer.id),
    clearedBy: [],
    rule: 'lacquer-cure',
    since: lacquer.endedAt,
    clearedWith: null,
    assembly: lacquer.assembly,
    until,
  })
}

/** The thinnest lacquer that was read, less what is to come off. */
function filmLeft(record: ProjectRecord, stage: Stage, flats: number, lacquer: Coat): Requirement {
  const known = filmPoints(record, lacquer.assembly).flatMap((point) =>
    point.lacquer === null ? [] : [{ ...point, left: point.lacquer - flats }],
  )
  const thinnest = known.reduce<(typeof known)[number] | null>(
    (least, point) => (least === null || point.left < least.left ? point : least),
    null,
  )
  if (thinnest !== null && thinnest.left >= LACQUER_LEAST_MICRONS)
    return met('film-left', lacquer.id)
  return unmet({
    ...base(stage, lacquer.id),
    rule: 'film-left',
    since: thinnest?.last.at ?? lacquer.endedAt,
    clearedWith:
      thinnest === null
        ? { command: 'film.record', input: { assembly: lacquer.assembly } }
        : { command: 'coat.record', input: { assembly: lacquer.assembly, product: 'lacquer' } },
    assembly: lacquer.assembly,
    flats,
    left: thinnest?.left ?? null,
    where: thinnest === null ? null : `${thinnest.panel}, ${thinnest.point}`,
  })
}
