import { expect, test } from 'vitest'
import { aLink, anActor, aRecord, aShell, aStage, at, lead, shellId } from '../../test/builders.ts'
import { press, pressed } from '../../test/press.ts'
import { startConditions } from '../gate/start.ts'
import { all, must } from '../record/table.ts'
import { stageInsertKeying } from './stage-insert-keying.ts'
import { stageRemove } from './stage-remove.ts'

const colour = aStage({
  name: 'Colour',
  assemblies: [shellId],
  state: 'signed off',
  startedAt: at(0),
  endedAt: at(2),
  signedOffAt: at(2),
})
const lacquer = aStage({ name: 'Lacquer', assemblies: [shellId] })
const window = aLink({ from: colour.id, to: lacquer.id, leastLagHours: 1, greatestLagHours: 24 })
const record = aRecord(aShell({ custodian: lead }), colour, lacquer, window)

test('one press puts the keying between the two, and the same window counts from its end', () => {
  const keyed = pressed(stageInsertKeying, anActor(lead), record, { link: window.id })
  const key = all(keyed.stages).find(({ keys }) => keys)
  if (key === undefined) throw new Error('No keying stage was made.')
  expect(key).toMatchObject({
    name: 'Key Colour, for Lacquer',
    assemblies: [shellId],
    hazards: ['dust'],
  })
  const rules = (after: typeof record, stage = lacquer) =>
    startConditions(after, must(after.stages, stage.id), at(100)).map(({ rule }) => rule)
  expect(rules(record)).toEqual(['greatest-lag'])
  expect(rules(keyed)).toEqual(['predecessor'])
  const done = {
    ...key,
    state: 'signed off' as const,
    startedAt: at(90),
    endedAt: at(95),
    signedOffAt: at(95),
  }
  const over = aRecord(...all(keyed.assemblies), ...all(keyed.links), colour, lacquer, done)
  expect(rules(over)).toEqual([])
  const late = { ...done, endedAt: at(70), startedAt: at(69) }
  expect(
    rules(aRecord(...all(keyed.assemblies), ...all(keyed.links), colour, lacquer, late)),
  ).toEqual(['greatest-lag'])
})

test('taking the keying away again gives the coat its window back', () => {
  const ada = anActor(lead)
  const keyed = pressed(stageInsertKeying, ada, record, { link: window.id })
  const key = all(keyed.stages).find(({ keys }) => keys)
  const undone = pressed(stageRemove, ada, keyed, { stage: key?.id, reason: 'Not needed.' })
  expect(must(undone.links, window.id)).toMatchObject({ greatestLagHours: 24, removedAt: null })
  expect(startConditions(undone, lacquer, at(100)).map(({ rule }) => rule)).toEqual([
    'greatest-lag',
  ])
})

test('it is refused where there is no window, and once the later stage has begun', () => {
  const none = { ...window, greatestLagHours: null }
  const ada = anActor(lead)
  expect(
    press(stageInsertKeying, ada, aRecord(colour, lacquer, none), { link: none.id }),
  ).toMatchObject({
    conditions: [{ rule: 'state', is: 'without a window' }],
  })
  const begun = aRecord(colour, { ...lacquer, state: 'in work' }, window)
  expect(press(stageInsertKeying, ada, begun, { link: window.id })).toMatchObject({
    conditions: [{ rule: 'state', is: 'in work' }],
  })
})
