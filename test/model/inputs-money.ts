import { shownForApproval, shownText } from '../../lib/money/approval.ts'
import { authorityOf } from '../../lib/money/change-order-approve.ts'
import type { Actor } from '../../lib/record/actor.ts'
import type { ChangeOrder } from '../../lib/record/entities/money.ts'
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
} from './scene.ts'

/** Odd pennies and odd rates, plus and minus, so that rounding on each line shows. */
const price = ({ dice }: Scene): Input => ({
  net: (dice.chance(25) ? -1 : 1) * dice.below(100_000),
  taxRate: dice.of([0, 500, 1750, 2000, 2333]) ?? 0,
})

const changeLines = (scene: Scene): Input[] =>
  Array.from({ length: 1 + scene.dice.below(3) }, () =>
    scene.dice.chance(30)
      ? { text: 'Hours', quantity: 2.5, unitPrice: 4333, net: 10_833, taxRate: 2000 }
      : { text: aName(scene, 'Work'), ...price(scene) },
  )

const said = (scene: Scene): Input => {
  const reason = scene.dice.of(['found', 'asked for', 'law', 'mistake']) ?? 'found'
  const bears = scene.dice.chance(75) ? 'owner' : (scene.dice.of(['shop', 'insurer']) ?? 'shop')
  return { reason, bears: reason === 'mistake' && scene.dice.chance(80) ? 'shop' : bears }
}

const anOrder = (scene: Scene, ...states: ChangeOrder['state'][]) =>
  oneOf(scene, scene.record.changeOrders, ({ state }) => states.some((one) => one === state))

const onOrder =
  (states: ChangeOrder['state'][], more: (scene: Scene) => Input = () => ({})) =>
  (scene: Scene): Input | undefined => {
    const order = anOrder(scene, ...states)
    return order && { changeOrder: order.id, ...more(scene) }
  }

/** What the phone of this approver shows before the yes. */
export function hashShown(scene: Scene, order: ChangeOrder, actor: Actor): string {
  const authority = authorityOf(actor, scene.record, order) ?? 'payer'
  return shownText(shownForApproval(scene.record, order.id, authority)).hash
}

/** Inputs of money and decisions. The hash of a yes depends on who gives it, and is put in later. */
export const moneyInputs: Inputs<
  | 'estimate.add'
  | 'estimate.withdraw'
  | 'changeOrder.raise'
  | 'changeOrder.revise'
  | 'changeOrder.send'
  | 'changeOrder.ask'
  | 'changeOrder.answer'
  | 'changeOrder.approve'
  | 'changeOrder.decline'
  | 'changeOrder.withdraw'
  | 'decision.ask'
  | 'decision.choose'
  | 'decision.withdraw'
> = {
  'estimate.add': (scene) => {
    const party = aShopParty(scene)
    const lines = Array.from({ length: 1 + scene.dice.below(3) }, () => ({
      text: aName(scene, 'Line'),
      type: scene.dice.chance(30) ? 'allowance' : 'fixed',
      ...price(scene),
    }))
    return party && { party: party.id, lines }
  },
  'estimate.withdraw': (scene) => {
    const line = oneOf(scene, scene.record.estimateLines, (one) => one.withdrawnAt === null)
    return line && { estimateLine: line.id }
  },
  'changeOrder.raise': (scene) => {
    const party = aShopParty(scene)
    return (
      party && {
        party: party.id,
        title: aName(scene, 'Change'),
        ...said(scene),
        days: scene.dice.below(9) - 2,
        lines: changeLines(scene),
      }
    )
  },
  'changeOrder.revise': onOrder(['draft', 'approved'], (scene) => ({
    ...perhaps(scene, 60, { lines: changeLines(scene) }),
    ...perhaps(scene, 30, said(scene)),
  })),
  'changeOrder.send': onOrder(['draft']),
  'changeOrder.ask': onOrder(['sent'], () => ({ text: 'Why so dear?' })),
  'changeOrder.answer': onOrder(['sent', 'approved'], () => ({ text: 'The bodies are worn.' })),
  'changeOrder.approve': onOrder(['sent'], () => ({ shownHash: '0'.repeat(64) })),
  'changeOrder.decline': onOrder(['sent', 'approved']),
  'changeOrder.withdraw': onOrder(['draft', 'sent', 'approved']),
  'decision.ask': (scene) => {
    const chooser = aParty(scene, ({ role }) => role === 'owner' || role === 'shop')
    const stages = all(scene.record.stages).filter(({ state }) => state === 'planned')
    return (
      chooser && {
        question: aName(scene, 'Which belts'),
        chooser: chooser.id,
        options: [{ text: 'Lap', net: 4000 }, { text: 'Three-point' }],
        stages: scene.dice.some(stages, 1).map(({ id }) => id),
      }
    )
  },
  'decision.choose': (scene) => {
    const decision = oneOf(scene, scene.record.decisions, ({ state }) => state === 'asked')
    const option = oneOf(
      scene,
      scene.record.decisionOptions,
      (one) => one.decision === decision?.id,
    )
    return decision && option && { decision: decision.id, option: option.id }
  },
  'decision.withdraw': (scene) => {
    const decision = oneOf(scene, scene.record.decisions, ({ state }) => state !== 'withdrawn')
    return decision && { decision: decision.id, reason: 'asked too early' }
  },
}
