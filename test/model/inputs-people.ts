import { unpassedChecks } from '../../lib/gate/sign-off.ts'
import { startConditions } from '../../lib/gate/start.ts'
import { all } from '../../lib/record/table.ts'
import { aName, aParty, type Input, type Inputs, oneOf, perhaps, type Scene } from './scene.ts'

const aMember = (scene: Scene) =>
  oneOf(scene, scene.book.memberships, ({ removedAt }) => removedAt === null)

const aBay = (scene: Scene) => oneOf(scene, scene.book.bays, ({ retiredAt }) => retiredAt === null)

/** An unmet condition of a stage: of its start, or a check. */
function aCondition(scene: Scene) {
  const { record, happenedAt, dice } = scene
  const stage = oneOf(
    scene,
    record.stages,
    ({ state, removedAt }) => removedAt === null && state !== 'signed off',
  )
  if (stage === undefined) return undefined
  const checks = unpassedChecks(record, stage)
  const unmet = dice.of([...startConditions(record, stage, happenedAt), ...checks, ...checks])
  return unmet && { stage, unmet }
}

/** Inputs of what is conceded, asked, told and written. */
const saidInputs: Inputs<
  | 'condition.concede'
  | 'concession.withdraw'
  | 'condition.ask'
  | 'ask.close'
  | 'told.confirm'
  | 'note.write'
  | 'note.withdraw'
> = {
  'condition.concede': (scene) => {
    // Half of them are a second yes to what the other party conceded.
    const half = scene.dice.chance(50)
      ? scene.dice.of(
          all(scene.record.concessions).filter(
            ({ needs, parties, withdrawnAt }) =>
              withdrawnAt === null && parties.length < needs.length,
          ),
        )
      : undefined
    const found = half === undefined ? aCondition(scene) : undefined
    const on: Input | undefined =
      half !== undefined
        ? { stage: half.stage, rule: half.rule, entity: half.entity }
        : found && { stage: found.stage.id, rule: found.unmet.rule, entity: found.unmet.entity }
    return on && { ...on, reason: 'Both have looked at it.' }
  },
  'concession.withdraw': (scene) => {
    const standing = oneOf(scene, scene.record.concessions, (one) => one.withdrawnAt === null)
    return standing && { concession: standing.id, reason: 'It was not so.' }
  },
  'condition.ask': (scene) => {
    const found = aCondition(scene)
    const to = found?.unmet.clearedBy[0] ?? aParty(scene, () => true)?.id
    return (
      found &&
      to && { stage: found.stage.id, rule: found.unmet.rule, entity: found.unmet.entity, to }
    )
  },
  'ask.close': (scene) => {
    const ask = oneOf(scene, scene.record.asks, ({ closedAt }) => closedAt === null)
    return ask && { ask: ask.id }
  },
  'told.confirm': (scene) => {
    const told = oneOf(scene, scene.record.told, ({ confirmedAt }) => confirmedAt === null)
    return told && { told: told.id }
  },
  'note.write': (scene) => {
    const { record, dice } = scene
    const on = dice.of([
      ...all(record.stages),
      ...all(record.changeOrders),
      ...all(record.notes),
      ...all(record.assemblies),
    ])
    const sharing = dice.chance(50) ? 'shop' : 'shared'
    return on && { on: on.id, text: 'Looked at today.', sharing }
  },
  'note.withdraw': (scene) => {
    const note = oneOf(scene, scene.record.notes, ({ withdrawnAt }) => withdrawnAt === null)
    return note && { note: note.id, reason: 'on the wrong card' }
  },
}

const bookInputs: Inputs<
  | 'shop.create'
  | 'shop.describe'
  | 'bay.add'
  | 'bay.describe'
  | 'bay.retire'
  | 'membership.add'
  | 'membership.change'
  | 'membership.remove'
> = {
  'shop.create': (scene) => ({
    name: aName(scene, 'Shop'),
    currency: 'GBP',
    timeZone: 'Europe/London',
    taxRegistered: scene.dice.chance(50),
    taxRate: 0,
  }),
  'shop.describe': (scene) => ({
    ...perhaps(scene, 50, { name: aName(scene, 'Shop') }),
    ...perhaps(scene, 50, {
      opensAt: '07:30',
      closesAt: scene.dice.chance(80) ? '17:00' : '06:00',
    }),
  }),
  'bay.add': (scene) => ({ name: aName(scene, 'Bay'), type: 'bench' }),
  'bay.describe': (scene) => {
    const bay = aBay(scene)
    return bay && { bay: bay.id, type: 'lift' }
  },
  'bay.retire': (scene) => {
    const bay = aBay(scene)
    return bay && { bay: bay.id }
  },
  'membership.add': (scene) => ({
    person: scene.dice.of(['psn_wyn', 'psn_tobin', 'psn_ines', 'psn_ash']) ?? '',
    role: scene.dice.chance(30) ? 'manager' : 'hand',
  }),
  'membership.change': (scene) => {
    const member = aMember(scene)
    const role = scene.dice.chance(70) ? 'manager' : 'hand'
    return member && { membership: member.id, role }
  },
  'membership.remove': (scene) => {
    const member = aMember(scene)
    return member && { membership: member.id }
  },
}

/** Inputs of who takes part, of what is said, and of shop books. */
export const peopleInputs: Inputs<
  | 'project.create'
  | 'project.describe'
  | 'party.add'
  | 'party.describe'
  | 'party.leave'
  | 'participant.add'
  | 'participant.remove'
  | keyof typeof saidInputs
  | keyof typeof bookInputs
> = {
  ...saidInputs,
  ...bookInputs,
  'project.create': (scene) => ({
    shop: scene.book.id,
    name: aName(scene, 'Car'),
    owner: 'An owner',
  }),
  'project.describe': (scene) =>
    scene.dice.chance(60)
      ? { standingConsentEach: 50_000, standingConsentTotal: scene.dice.below(200_000) }
      : { year: 1961, description: 'Ivory over oxblood.' },
  'party.add': (scene) => ({
    name: aName(scene, 'Party'),
    role: scene.dice.of(['shop', 'supplier', 'observer', 'owner']) ?? 'shop',
    ...perhaps(scene, 10, { bills: 'lead' }),
    ...perhaps(scene, 15, { shop: scene.book.id }),
  }),
  'party.describe': (scene) => {
    const party = oneOf(scene, scene.record.parties)
    return (
      party && {
        party: party.id,
        ...perhaps(scene, 50, { name: aName(scene, 'Party') }),
        ...perhaps(scene, 20, { shop: scene.book.id }),
      }
    )
  },
  'party.leave': (scene) => {
    const party = oneOf(scene, scene.record.parties, ({ lead, role }) => !lead && role !== 'owner')
    return party && { party: party.id }
  },
  'participant.add': (scene) => {
    const party = aParty(scene, ({ role }) => role !== 'shop')
    return party && { party: party.id, person: scene.dice.of(['psn_kit', 'psn_wyn']) ?? '' }
  },
  'participant.remove': (scene) => {
    const one = oneOf(scene, scene.record.participants, ({ removedAt }) => removedAt === null)
    return one && { participant: one.id }
  },
}
