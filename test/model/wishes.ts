import { startConditions } from '../../lib/gate/start.ts'
import type { CommandName } from '../../lib/record/command-names.ts'
import type { Condition, Json } from '../../lib/record/condition.ts'
import type { Stage } from '../../lib/record/entities/work.ts'
import { all, type Table } from '../../lib/record/table.ts'
import { coatingInputs } from './inputs-coating.ts'
import { moneyInputs } from './inputs-money.ts'
import { peopleInputs } from './inputs-people.ts'
import { thingInputs } from './inputs-things.ts'
import { workInputs } from './inputs-work.ts'
import type { Input, Inputs, Scene, Wish } from './scene.ts'

/** A plausible input of every command: a new one that isn't here doesn't compile. */
const inputs: Inputs = {
  ...workInputs,
  ...coatingInputs,
  ...thingInputs,
  ...moneyInputs,
  ...peopleInputs,
}

/** How often a command is wished for while a build order is set up, and in the work that follows. */
const weights: { readonly [Name in CommandName]: readonly [setUp: number, work: number] } = {
  'project.create': [0, 0.5],
  'project.describe': [2, 1],
  'party.add': [1, 0.5],
  'party.describe': [1, 0.5],
  'party.leave': [0, 1.5],
  'participant.add': [1, 0.5],
  'participant.remove': [0, 1],
  'assembly.add': [10, 0.5],
  'assembly.describe': [1, 0.5],
  'assembly.fit': [6, 2],
  'assembly.takeOff': [1, 3],
  'stage.add': [26, 2],
  'stage.describe': [4, 2],
  'stage.remove': [1, 1],
  'stage.precautions': [0, 3],
  'stage.insertKeying': [0.5, 1],
  'metal.record': [0, 2],
  'air.record': [0, 3],
  'inDate.record': [1, 1],
  'inDate.withdraw': [0, 2],
  'milestone.agree': [1, 2],
  'milestone.meet': [0, 2],
  'milestone.withdraw': [0, 2],
  'stage.split': [1, 1],
  'stage.merge': [1, 1],
  'stage.move': [2, 1],
  'stage.give': [1, 1],
  'link.describe': [2, 1],
  'step.add': [3, 2],
  'step.describe': [1, 1],
  'step.remove': [0.5, 0.5],
  'step.tick': [0, 6],
  'coat.record': [0, 4],
  'coat.correct': [0, 4],
  'coat.strip': [0, 4],
  'film.record': [0, 2],
  'colour.add': [2, 2],
  'colour.describe': [0.5, 2],
  'colour.cardAgreed': [0, 3],
  'colour.remove': [0, 4],
  'link.draw': [16, 3],
  'link.remove': [1, 0.5],
  'check.add': [10, 2],
  'check.remove': [1, 0.5],
  'check.record': [0, 6],
  'hold.set': [7, 2],
  'hold.remove': [0.5, 1],
  'hold.release': [0, 4],
  'hold.invite': [1, 2],
  'hold.waive': [2, 4],
  'hold.takeBack': [0, 6],
  'buildOrder.import': [2, 0.5],
  'library.build': [1, 0],
  'stage.start': [0, 4],
  'stage.pause': [0, 2],
  'stage.resume': [0, 3],
  'stage.end': [0, 4],
  'stage.correctEnd': [0, 2],
  'stage.takeBack': [0, 4],
  'stage.signOff': [0, 5],
  'stage.countersign': [0, 5],
  'stage.reopen': [0, 3],
  'stage.confirm': [0, 3],
  'stage.reportDone': [0, 2],
  'condition.concede': [1, 7],
  'concession.withdraw': [0, 1],
  'condition.ask': [1, 2],
  'ask.close': [0, 1],
  'told.confirm': [0, 3],
  'handover.prepare': [2, 3],
  'handover.release': [0, 5],
  'handover.takeBack': [0, 1],
  'handover.receive': [0, 7],
  'estimate.add': [5, 2],
  'estimate.withdraw': [1, 1],
  'changeOrder.raise': [5, 3],
  'changeOrder.revise': [1, 2],
  'changeOrder.send': [2, 4],
  'changeOrder.ask': [0, 2],
  'changeOrder.answer': [0, 1],
  'changeOrder.approve': [0, 6],
  'changeOrder.decline': [0, 2],
  'changeOrder.withdraw': [0, 1],
  'decision.ask': [2, 1],
  'decision.choose': [0, 3],
  'decision.withdraw': [0, 1],
  'part.want': [4, 1],
  'part.order': [0, 2],
  'part.promise': [0, 2],
  'part.arrive': [0, 2],
  'part.inspect': [0, 3],
  'part.withdraw': [0, 1.5],
  'window.open': [2, 2],
  'window.close': [0, 1],
  'slot.claim': [5, 8],
  'slot.agree': [0, 3],
  'slot.release': [0, 2],
  'note.write': [1, 1],
  'note.withdraw': [0, 2],
  'shop.create': [0, 0.4],
  'shop.describe': [0, 0.5],
  'bay.add': [1, 0.3],
  'bay.describe': [0, 0.5],
  'bay.retire': [0, 0.4],
  'membership.add': [0, 0.5],
  'membership.change': [0, 0.8],
  'membership.remove': [0, 1.2],
}

const isName = (name: string): name is CommandName => name in weights

/** Every command in tenths of its weight, to draw from. */
const lots = (phase: 0 | 1): readonly CommandName[] =>
  Object.entries(weights).flatMap(([name, weight]) =>
    isName(name) ? Array.from({ length: Math.round(weight[phase] * 10) }, () => name) : [],
  )
const urns = { setUp: lots(0), work: lots(1) }

const only = <T>(table: Table<T>, id: Json | undefined): Table<T> => {
  const row = typeof id === 'string' ? table.rows.get(id) : undefined
  return row === undefined ? table : { ...table, rows: new Map([[String(id), row]]) }
}

/** Where a press names what it is about, what it leaves out is made up for that. */
const narrowed = (scene: Scene, { assemblies, ...said }: Input): Scene => ({
  ...scene,
  record: {
    ...scene.record,
    stages: only(scene.record.stages, said.stage),
    checks: only(scene.record.checks, said.check),
    holds: only(scene.record.holds, said.hold),
    handovers: only(scene.record.handovers, said.handover),
    parts: only(scene.record.parts, said.part),
    slots: only(scene.record.slots, said.slot),
    changeOrders: only(scene.record.changeOrders, said.changeOrder),
    decisions: only(scene.record.decisions, said.decision),
    assemblies: only(
      scene.record.assemblies,
      Array.isArray(assemblies) ? assemblies[0] : undefined,
    ),
  },
})

function wishFor(scene: Scene, name: CommandName, said: Input = {}): Wish | undefined {
  const input = inputs[name](narrowed(scene, said))
  return input && { name, input: { ...input, ...said } }
}

/** Any command, by its weight. */
export function anyWish(scene: Scene, phase: 'setUp' | 'work'): Wish | undefined {
  const name = scene.dice.of(urns[phase])
  return name && wishFor(scene, name)
}

/** The press that a refusal offers, or a concession of what it names, or an ask. */
function clearing(scene: Scene, stage: Stage, condition: Condition): Wish | undefined {
  const { dice, record } = scene
  const on = { stage: stage.id, rule: condition.rule, entity: condition.entity }
  if (condition.concedable && dice.chance(25))
    return { name: 'condition.concede', input: { ...on, reason: 'Both have looked at it.' } }
  if (condition.clearedWith === null) return undefined
  const { command, input } = condition.clearedWith
  const [to] = condition.clearedBy
  if (to !== undefined && dice.chance(4)) return { name: 'condition.ask', input: { ...on, to } }
  if (condition.rule === 'hold' && dice.chance(90)) {
    const before = record.stages.rows.get(condition.stage)
    if (before?.state === 'planned') return bringOn(scene, before)
  }
  if (command === 'handover.prepare') {
    const coming = all(record.handovers).find(
      ({ state, assemblies }) =>
        (state === 'prepared' || state === 'released') &&
        assemblies.some((id) => id === condition.entity),
    )
    const press = coming?.state === 'released' ? 'handover.receive' : 'handover.release'
    if (coming !== undefined) return wishFor(scene, press, { handover: coming.id })
  }
  return wishFor(scene, command, input)
}

/** What brings a stage on. */
function bringOn(scene: Scene, stage: Stage): Wish | undefined {
  const { record, dice, happenedAt } = scene
  const on = { stage: stage.id }
  switch (stage.state) {
    case 'planned':
    case 'reopened': {
      const unmet = dice.of(startConditions(record, stage, happenedAt))
      return unmet === undefined ? wishFor(scene, 'stage.start', on) : clearing(scene, stage, unmet)
    }
    case 'paused':
      return wishFor(scene, 'stage.resume', on)
    case 'in doubt':
      return wishFor(scene, dice.chance(80) ? 'stage.confirm' : 'stage.reopen', on)
    default: {
      const check = dice.of(
        all(record.checks).filter(
          (one) => one.stage === stage.id && one.removedAt === null && one.state !== 'passed',
        ),
      )
      if (check !== undefined && dice.chance(85))
        return wishFor(scene, 'check.record', { check: check.id })
      const ends = stage.state === 'in work' && dice.chance(50)
      return wishFor(scene, ends ? 'stage.end' : 'stage.signOff', on)
    }
  }
}

/** What brings one of the unfinished stages on, mostly one of the first. */
export function nextWish(scene: Scene): Wish | undefined {
  const { record, dice } = scene
  const unfinished = all(record.stages).filter(
    ({ removedAt, state }) => removedAt === null && state !== 'signed off',
  )
  const stage = dice.of(dice.chance(60) ? unfinished.slice(0, 4) : unfinished)
  return stage && bringOn(scene, stage)
}
