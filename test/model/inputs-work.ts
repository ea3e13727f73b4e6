import type { Check, Hold, Stage } from '../../lib/record/entities/work.ts'
import { all } from '../../lib/record/table.ts'
import {
  aName,
  aParty,
  aShopParty,
  type Input,
  type Inputs,
  oneOf,
  perhaps,
  type Scene,
  toldFor,
} from './scene.ts'
import { arrivedFiles, hoursFrom, lostFile } from './world.ts'

const reason = { reason: 'pressed by mistake' }

const aStage = (scene: Scene, ...states: Stage['state'][]): Stage | undefined =>
  oneOf(
    scene,
    scene.record.stages,
    ({ state, removedAt }) =>
      removedAt === null && (states.length === 0 || states.some((one) => one === state)),
  )

const onStage =
  (states: Stage['state'][], more: (scene: Scene, stage: Stage) => Input = () => ({})) =>
  (scene: Scene): Input | undefined => {
    const stage = aStage(scene, ...states)
    return stage && { stage: stage.id, ...more(scene, stage) }
  }

/** A time at which work may have ended; now and then one at which it can't have. */
export function anEnd({ dice, now }: Scene, startedAt: string | null): string {
  if (dice.chance(4)) return hoursFrom(now, 3)
  const from = startedAt === null ? Date.parse(now) - 7_200_000 : Date.parse(startedAt)
  const span = Date.parse(now) - from
  return new Date(from + Math.floor((span * dice.below(101)) / 100)).toISOString()
}

const told = (scene: Scene, stage: Stage) => toldFor(scene, stage.party)

/** What may be said of a stage, on assemblies that its party mostly has. */
function saidOfStage(scene: Scene, party: string): Input {
  const { dice, record } = scene
  const here = all(record.assemblies).filter(({ custodian }) => custodian === party)
  const pool = here.length > 0 && dice.chance(70) ? here : all(record.assemblies)
  const ids = pool.map(({ id }) => id)
  const own = dice.some(ids, 2)
  const [host, thing] = dice.shuffled(ids)
  const fitting = dice.chance(20) && host !== undefined && thing !== undefined
  const others = all(record.parties).filter((one) => one.role !== 'observer' && one.id !== party)
  const order = dice.of(all(record.changeOrders))
  const decision = dice.of(all(record.decisions))
  const next = dice.of(others)
  return {
    assemblies: own.length > 0 ? own : ids.slice(0, 1),
    ...(fitting && { host, fits: [thing] }),
    ...(!fitting && dice.chance(15) && { removes: dice.some(ids, 1) }),
    ...perhaps(scene, 10, { needsFitted: dice.some(ids, 1) }),
    ...perhaps(scene, 10, { needsOff: dice.some(ids, 1) }),
    ...perhaps(scene, 15, { needsBay: true }),
    ...perhaps(scene, 12, { hazards: dice.some(['dust', 'hot work', 'fuel'], 2) }),
    ...perhaps(scene, 6, { airAgeMost: 90, humidityMost: 85, surfaceLeast: 10 }),
    ...perhaps(scene, 6, { inDate: ['torque wrench'] }),
    ...perhaps(scene, 25, { exclusive: false }),
    ...perhaps(scene, 20, { safety: true, caution: 'Torque by the data sheet.' }),
    ...perhaps(scene, 20, { countersigns: dice.some([...others.map(({ id }) => id), party], 2) }),
    ...(next !== undefined && perhaps(scene, 20, { handoverTo: next.id })),
    ...(order !== undefined && perhaps(scene, 15, { changeOrder: order.id })),
    ...(decision !== undefined && perhaps(scene, 10, { decision: decision.id })),
    ...perhaps(scene, 30, { hoursLeast: dice.below(5), hoursLikely: 5, hoursMost: 9 }),
  }
}

const checkTypes = ['reading', 'photo', 'tick', 'document'] as const

/** Evidence that mostly passes. */
function evidence({ dice }: Scene, check: Check): Input {
  if (check.type === 'reading') return { value: dice.chance(75) ? 2 : dice.below(9) }
  if (check.type === 'tick') return {}
  return { files: [dice.chance(90) ? (arrivedFiles[dice.below(2)] ?? lostFile) : lostFile] }
}

const isOpen = (hold: Hold): boolean => hold.clearedAt === null

function onHold(scene: Scene, suits: (hold: Hold) => boolean, more: Input): Input | undefined {
  const hold = oneOf(scene, scene.record.holds, (one) => {
    const state = scene.record.stages.rows.get(one.stage)?.state
    return suits(one) && state !== 'planned' && state !== 'reopened'
  })
  return hold && { hold: hold.id, ...more }
}

/** An ordered pair, mostly forwards, so that circles are tried and yet rare. */
function aPair(scene: Scene): readonly [Stage, Stage] | undefined {
  const stages = all(scene.record.stages)
  const [a, b] = scene.dice.shuffled(stages)
  if (a === undefined || b === undefined) return undefined
  return a.number < b.number !== scene.dice.chance(12) ? [a, b] : [b, a]
}

/** Inputs of what makes and moves a build order. */
export const workInputs: Inputs<
  | 'stage.add'
  | 'stage.describe'
  | 'stage.remove'
  | 'stage.precautions'
  | 'stage.insertKeying'
  | 'air.record'
  | 'metal.record'
  | 'inDate.record'
  | 'inDate.withdraw'
  | 'milestone.agree'
  | 'milestone.meet'
  | 'milestone.withdraw'
  | 'stage.split'
  | 'stage.merge'
  | 'stage.move'
  | 'stage.give'
  | 'link.describe'
  | 'step.add'
  | 'step.describe'
  | 'step.remove'
  | 'step.tick'
  | 'link.draw'
  | 'link.remove'
  | 'check.add'
  | 'check.remove'
  | 'check.record'
  | 'hold.set'
  | 'hold.remove'
  | 'hold.release'
  | 'hold.invite'
  | 'hold.waive'
  | 'hold.takeBack'
  | 'buildOrder.import'
  | 'library.build'
  | 'stage.start'
  | 'stage.pause'
  | 'stage.resume'
  | 'stage.end'
  | 'stage.correctEnd'
  | 'stage.takeBack'
  | 'stage.signOff'
  | 'stage.countersign'
  | 'stage.reopen'
  | 'stage.confirm'
  | 'stage.reportDone'
> = {
  'stage.add': (scene) => {
    const party = aShopParty(scene)
    return (
      party && {
        name: aName(scene, 'Stage'),
        party: party.id,
        ...saidOfStage(scene, party.id),
        ...perhaps(scene, 5, { number: 1 + scene.dice.below(12) }),
      }
    )
  },
  'stage.describe': (scene) => {
    const stage = aStage(scene, 'planned')
    if (stage === undefined) return undefined
    const party = scene.dice.chance(15) ? (aShopParty(scene)?.id ?? stage.party) : stage.party
    const said = scene.dice.some(Object.entries(saidOfStage(scene, stage.party)), 3)
    return { stage: stage.id, ...perhaps(scene, 20, { party }), ...Object.fromEntries(said) }
  },
  'stage.remove': onStage(['planned'], () => reason),
  'stage.precautions': onStage(['planned', 'reopened'], () => ({})),
  'stage.insertKeying': (scene) => {
    const link = oneOf(
      scene,
      scene.record.links,
      ({ removedAt, greatestLagHours }) => removedAt === null && greatestLagHours !== null,
    )
    return link && { link: link.id, name: aName(scene, 'Key') }
  },
  'metal.record': (scene) => {
    const link = oneOf(scene, scene.record.links, ({ leastLagHours }) => leastLagHours > 0)
    return (
      link && {
        stage: link.from,
        metal: 5 + scene.dice.below(30),
        ...perhaps(scene, 40, { takenAt: hoursFrom(scene.now, -scene.dice.below(20)) }),
      }
    )
  },
  'air.record': onStage(['planned', 'reopened', 'in work'], (scene) => ({
    air: 18,
    surface: scene.dice.of([9, 16, 17, 24]) ?? 17,
    humidity: scene.dice.of([45, 60, 90]) ?? 60,
    ...perhaps(scene, 20, { takenAt: hoursFrom(scene.now, -scene.dice.below(3)) }),
  })),
  'inDate.record': (scene) => {
    const party = aShopParty(scene)
    const month = 1 + scene.dice.below(6)
    return (
      party && {
        party: party.id,
        thing: scene.dice.of(['torque wrench', 'booth clearance']) ?? 'torque wrench',
        name: 'The one by the door',
        minutes: 4,
        doneOn: '2026-01-05',
        until: `2026-0${month}-20`,
      }
    )
  },
  'inDate.withdraw': (scene) => {
    const one = oneOf(scene, scene.record.inDates, ({ withdrawnAt }) => withdrawnAt === null)
    return one && { inDate: one.id }
  },
  'milestone.agree': onStage(['planned'], (scene) => ({
    payer: aParty(scene, ({ role }) => role !== 'observer')?.id ?? '',
    name: 'A third before the build',
    net: scene.dice.below(90_000),
  })),
  'milestone.meet': (scene) => {
    const one = oneOf(scene, scene.record.milestones, ({ removedAt }) => removedAt === null)
    return one && { milestone: one.id }
  },
  'milestone.withdraw': (scene) => {
    const one = oneOf(scene, scene.record.milestones, ({ removedAt }) => removedAt === null)
    return one && { milestone: one.id }
  },
  'stage.split': onStage(['planned'], (scene, stage) => ({
    first: scene.dice.chance(50) ? stage.name : aName(scene, 'First of it'),
    second: aName(scene, 'Second of it'),
    ...perhaps(scene, 30, { hours: scene.dice.below(6) }),
    checks: scene.dice.some(
      all(scene.record.checks)
        .filter((check) => check.stage === stage.id)
        .map(({ id }) => id),
      2,
    ),
  })),
  'stage.merge': (scene) => {
    const pair = aPair(scene)
    return pair && { stage: pair[0].id, other: pair[1].id, name: aName(scene, 'Both') }
  },
  'stage.move': (scene) => {
    const pair = aPair(scene)
    const third = aStage(scene, 'planned')
    if (pair === undefined || third === undefined) return undefined
    const before = scene.dice.chance(40) ? [pair[1].id] : []
    return { stage: third.id, after: [pair[0].id], before }
  },
  'stage.give': onStage(['planned', 'paused', 'reopened'], (scene, stage) => ({
    party: aShopParty(scene)?.id ?? stage.party,
    ...reason,
  })),
  'link.describe': (scene) => {
    const link = oneOf(scene, scene.record.links, ({ removedAt }) => removedAt === null)
    const least = scene.dice.of([0, 2, 30]) ?? 0
    return (
      link && {
        link: link.id,
        leastLagHours: least,
        ...perhaps(scene, 20, { greatestLagHours: least + scene.dice.below(100) - 2 }),
        ...perhaps(scene, 20, { why: 'cure', safety: scene.dice.chance(50) }),
        ...perhaps(scene, 50, { curesAt: 20 }),
      }
    )
  },
  'step.add': onStage(['planned', 'in work'], () => ({
    text: 'Count the bolts.',
    tools: ['Tray'],
  })),
  'step.describe': (scene) => {
    const step = oneOf(scene, scene.record.steps, ({ removedAt }) => removedAt === null)
    return step && { step: step.id, text: 'Count them twice.', place: 1 + scene.dice.below(3) }
  },
  'step.remove': (scene) => {
    const step = oneOf(scene, scene.record.steps, ({ removedAt }) => removedAt === null)
    return step && { step: step.id }
  },
  'step.tick': (scene) => {
    const step = oneOf(scene, scene.record.steps, ({ removedAt }) => removedAt === null)
    return step && { step: step.id, done: scene.dice.chance(80) }
  },
  'link.draw': (scene) => {
    const pair = aPair(scene)
    if (pair === undefined) return undefined
    const least = scene.dice.of([0, 1, 12, 40]) ?? 0
    return {
      from: pair[0].id,
      to: pair[1].id,
      ...perhaps(scene, 60, { leastLagHours: least }),
      ...perhaps(scene, 12, { greatestLagHours: least + scene.dice.below(200) - 2 }),
    }
  },
  'link.remove': (scene) => {
    const link = oneOf(scene, scene.record.links, ({ removedAt }) => removedAt === null)
    return link && { link: link.id, ...reason }
  },
  'check.add': onStage(['planned', 'planned', 'in work', 'ended'], (scene) => {
    const type = scene.dice.of(checkTypes) ?? 'tick'
    const limits = { unit: 'bar', least: 1, greatest: 3 }
    return { type, name: aName(scene, 'Check'), ...(type === 'reading' && limits) }
  }),
  'check.remove': (scene) => {
    const check = oneOf(scene, scene.record.checks, ({ removedAt }) => removedAt === null)
    return check && { check: check.id, ...reason }
  },
  'check.record': (scene) => {
    const { stages, checks } = scene.record
    const check = oneOf(scene, checks, (one) => {
      const state = stages.rows.get(one.stage)?.state ?? 'planned'
      return one.removedAt === null && ['in work', 'ended', 'in doubt'].includes(state)
    })
    const party = check && stages.rows.get(check.stage)?.party
    return check && { check: check.id, ...evidence(scene, check), ...toldFor(scene, party ?? '') }
  },
  'hold.set': onStage(['planned', 'in work'], (scene, stage) => ({
    point: scene.dice.chance(50) ? 'hold' : 'witness',
    name: 'Seen before it is closed',
    party: scene.dice.chance(40)
      ? stage.party
      : (aParty(scene, ({ role }) => role !== 'supplier')?.id ?? stage.party),
    ...perhaps(scene, 8, { person: 'psn_wyn' }),
  })),
  'hold.remove': (scene) => {
    const hold = oneOf(scene, scene.record.holds, (one) => isOpen(one) || scene.dice.chance(10))
    return hold && { hold: hold.id, ...reason }
  },
  'hold.release': (scene) =>
    onHold(scene, isOpen, perhaps(scene, 30, { remark: 'Seen, all well.' })),
  'hold.waive': (scene) => onHold(scene, (one) => isOpen(one) && one.point === 'witness', {}),
  'hold.invite': (scene) =>
    onHold(scene, isOpen, { visitAt: hoursFrom(scene.now, scene.dice.below(40) - 2) }),
  'hold.takeBack': (scene) => onHold(scene, (one) => !isOpen(one), reason),
  'library.build': (scene) => {
    const party = aShopParty(scene)
    return {
      scope: 'trim',
      options: [],
      parties: party ? [{ trade: 'trimmer', party: party.id }] : [],
    }
  },
  'buildOrder.import': (scene) => {
    const party = aShopParty(scene)
    const assembly = scene.dice.of(all(scene.record.assemblies))
    const first = scene.dice.of(all(scene.record.stages))
    if (party === undefined || assembly === undefined) return undefined
    const hours = { hoursLeast: 1, hoursLikely: 2, hoursMost: null }
    const stage = (key: string) => ({
      key,
      name: aName(scene, 'Line'),
      party: party.id,
      assemblies: [assembly.id],
      ...hours,
    })
    const link = (from: string, to: string) => ({
      from,
      to,
      leastLagHours: scene.dice.below(3),
      greatestLagHours: null,
    })
    return {
      parties: [],
      assemblies: [],
      stages: [stage('line1'), stage('line2')],
      links: [
        link('line1', 'line2'),
        ...(first === undefined ? [] : [link(first.id, 'line1')]),
        ...(scene.dice.chance(15) ? [link('line2', 'line1')] : []),
      ],
      checks: [
        { stage: 'line2', type: 'tick', name: 'Clean', unit: null, least: null, greatest: null },
      ],
      holds: [{ stage: 'line1', point: 'witness', name: 'Look', party: party.id, person: null }],
    }
  },
  'stage.start': onStage(['planned', 'reopened'], told),
  'stage.pause': onStage(['in work'], told),
  'stage.resume': onStage(['paused'], told),
  'stage.end': onStage(['in work', 'paused'], (scene, stage) => ({
    ...(scene.dice.chance(70) && { endedAt: anEnd(scene, stage.startedAt) }),
    ...told(scene, stage),
  })),
  'stage.correctEnd': onStage(['ended', 'signed off', 'in doubt'], (scene, stage) => ({
    endedAt: anEnd(scene, stage.startedAt),
    ...reason,
  })),
  'stage.takeBack': onStage(['in work', 'ended', 'signed off'], () => reason),
  'stage.signOff': onStage(['in work', 'ended', 'ended'], (scene, stage) => {
    const end = { end: { endedAt: anEnd(scene, stage.startedAt) } }
    return stage.state === 'ended' ? perhaps(scene, 5, end) : perhaps(scene, 85, end)
  }),
  'stage.countersign': (scene) => {
    const stage = oneOf(
      scene,
      scene.record.stages,
      ({ state, countersigns }) => state === 'signed off' && countersigns.length > 0,
    )
    const open = stage?.countersigns.filter(
      (one) =>
        !all(scene.record.signOffs).some(
          (sign) => sign.stage === stage.id && sign.party === one && sign.withdrawnAt === null,
        ),
    )
    const party = scene.dice.of(open ?? [])
    return stage && { stage: stage.id, ...(party !== undefined && { for: party }) }
  },
  'stage.reopen': onStage(['signed off', 'in doubt'], () => reason),
  'stage.confirm': onStage(['in doubt']),
  'stage.reportDone': onStage(['planned', 'reopened'], (scene, stage) => {
    const startedAt = hoursFrom(scene.now, -1 - scene.dice.below(30))
    return { startedAt, endedAt: anEnd(scene, startedAt), ...reason, ...told(scene, stage) }
  }),
}
