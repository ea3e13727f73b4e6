import { describe, expect, it } from 'vitest'
import {
  aLink,
  anActor,
  anEngine,
  aRecord,
  aStage,
  at,
  engineShop,
  lead,
} from '../../test/builders.ts'
import { press, pressed } from '../../test/press.ts'
import { must } from '../record/table.ts'
import { stagePause } from './stage-pause.ts'
import { stageResume } from './stage-resume.ts'
import { stageStart } from './stage-start.ts'

const ada = anActor(lead)
const stage = aStage({ state: 'in work', startedAt: at(1) })
const other = aStage()
const record = aRecord(stage, other, anEngine())
const input = { stage: stage.id }

describe('stage.pause and stage.resume', () => {
  const paused = pressed(stagePause, ada, record, input)

  it('lets another stage at the engine meanwhile, and not back while that works', () => {
    expect(must(paused.stages, stage.id)).toMatchObject({ state: 'paused', pausedAt: at(100) })
    const busy = pressed(stageStart, ada, paused, { stage: other.id })
    expect(press(stageResume, ada, busy, input)).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'exclusive-use', stage: other.id }],
    })
  })

  it('goes on where nothing has changed', () => {
    expect(must(pressed(stageResume, ada, paused, input).stages, stage.id)).toEqual({
      ...stage,
      workedBy: [ada.person],
    })
  })

  it('does not go on past work that was reopened meanwhile', () => {
    const before = aStage({ state: 'reopened', assemblies: [] })
    const link = aLink({ from: before.id, to: stage.id })
    const reopened = aRecord({ ...stage, state: 'paused' }, before, link, anEngine())
    expect(press(stageResume, ada, reopened, input)).toMatchObject({
      conditions: [{ rule: 'predecessor', is: 'reopened' }],
    })
  })

  it('refuses to pause what is not in work, and to go on with what is not paused', () => {
    expect(press(stagePause, ada, paused, input)).toMatchObject({
      conditions: [{ rule: 'state', is: 'paused' }],
    })
    expect(press(stageResume, ada, record, input)).toMatchObject({
      conditions: [{ rule: 'state', is: 'in work' }],
    })
  })

  it('is told to the lead by phone, marked so', () => {
    const theirs = aRecord({ ...stage, party: engineShop }, anEngine({ custodian: engineShop }))
    expect(press(stagePause, ada, theirs, { ...input, told: engineShop })).toMatchObject({
      entities: [{ state: 'paused' }, { kind: 'told', command: 'stage.pause' }],
    })
    expect(press(stagePause, ada, theirs, input).outcome).toBe('forbidden')
  })
})
