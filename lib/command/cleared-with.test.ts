import { describe, expect, it } from 'vitest'
import {
  aChangeOrder,
  aCheck,
  aDecision,
  aHandover,
  aHold,
  aLink,
  anAssembly,
  anEngine,
  aPart,
  aRecord,
  aShell,
  aStage,
  at,
  engineId,
  engineShop,
  lead,
  shellId,
} from '../../test/builders.ts'
import { aSlot } from '../../test/shop-builders.ts'
import { unpassedChecks } from '../gate/sign-off.ts'
import { startConditions } from '../gate/start.ts'
import type { Clearing } from '../record/condition.ts'
import type { ChangeOrder } from '../record/entities/money.ts'
import type { Part } from '../record/entities/things.ts'
import type { StageState } from '../record/entities/work.ts'
import type { Entity } from '../record/entity.ts'
import { must } from '../record/table.ts'
import { projectCommands } from './registry.ts'

const commands = new Map(Object.entries(projectCommands))

/** What is wrong with a press besides what the person still has to say. */
function amiss({ command, input }: Clearing): string[] {
  const known = commands.get(command)
  if (known === undefined) return [`${command} is in no registry`]
  const parsed = known.input.safeParse(input)
  if (parsed.success) return []
  return parsed.error.issues
    .filter((issue) => issue.path.length === 0 || String(issue.path[0]) in input)
    .map((issue) => `${command}: ${issue.path.join('.')} ${issue.message}`)
}

const stage = aStage({ assemblies: [shellId] })
function presses(...entities: Entity[]): Clearing[] {
  const record = aRecord(aShell(), anEngine(), stage, ...entities)
  const unmet = startConditions(record, must(record.stages, stage.id), at(100))
  return unmet.flatMap(({ clearedWith }) => clearedWith ?? [])
}
const before = (state: StageState, over = {}) => {
  const earlier = aStage({ assemblies: [], state, endedAt: at(9), signedOffAt: at(9), ...over })
  return [earlier, aLink({ from: earlier.id, to: stage.id, greatestLagHours: 10 })]
}
const states: StageState[] = ['planned', 'in work', 'paused', 'ended', 'in doubt', 'reopened']
const partStates: Part['state'][] = ['wanted', 'ordered', 'arrived', 'rejected']
const orderStates: ChangeOrder['state'][] = ['draft', 'sent', 'declined', 'withdrawn']

describe('a press that clears a condition of the gate', () => {
  const order = aChangeOrder()
  const choice = aDecision()
  const door = anAssembly()
  const signed = aStage({
    assemblies: [],
    state: 'signed off',
    endedAt: at(9),
    countersigns: [lead],
  })
  const link = aLink({ from: signed.id, to: stage.id })
  const engineIn = { ...stage, assemblies: [engineId] }
  const away = anEngine({ custodian: engineShop })
  const cases: [string, Clearing[]][] = [
    ...states.map((state): [string, Clearing[]] => [state, presses(...before(state))]),
    ...partStates.map((state): [string, Clearing[]] => [
      `part ${state}`,
      presses(aPart({ stages: [stage.id], state })),
    ]),
    ...orderStates.map((state): [string, Clearing[]] => [
      `change order ${state}`,
      presses({ ...stage, changeOrder: order.id }, { ...order, state }),
    ]),
    ['decision', presses({ ...stage, decision: choice.id }, choice)],
    ['countersign', presses(signed, link)],
    ['hold point', presses(signed, link, aHold({ stage: signed.id }))],
    ['witness point', presses(signed, link, aHold({ stage: signed.id, point: 'witness' }))],
    ['custody', presses(engineIn, away)],
    ['handover to release', presses(engineIn, away, aHandover())],
    ['handover to receive', presses(engineIn, away, aHandover({ state: 'released' }))],
    ['exclusive use', presses(aStage({ assemblies: [shellId], state: 'in work' }))],
    ['to be fitted', presses({ ...stage, needsFitted: [door.id] }, door)],
    ['to be off', presses({ ...stage, needsOff: [engineId] }, anEngine({ host: shellId }))],
    ['no slot', presses({ ...stage, needsBay: true })],
    ['slot asked', presses({ ...stage, needsBay: true }, aSlot({ state: 'asked', to: at(200) }))],
    [
      'check',
      unpassedChecks(aRecord(stage, aCheck({ stage: stage.id })), stage).flatMap(
        ({ clearedWith }) => clearedWith ?? [],
      ),
    ],
  ]

  it.each(cases)(
    '%s: is a command of the registry that takes what the press gives it',
    (_, all) => {
      expect(all.length).toBeGreaterThan(0)
      expect(all.flatMap(amiss)).toEqual([])
    },
  )

  it('is told apart from a press that a command would not take', () => {
    expect(amiss({ command: 'stage.start', input: { stage: 'asm_shell' } })).toHaveLength(1)
    expect(amiss({ command: 'stage.start', input: { stage: stage.id, bay: 1 } })).toHaveLength(1)
    expect(amiss({ command: 'hold.invite', input: {} })).toEqual([])
  })
})
