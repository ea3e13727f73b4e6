import { describe, expect, it } from 'vitest'
import {
  anActor,
  anAssembly,
  anEngine,
  aRecord,
  aShell,
  aStage,
  at,
  engineId,
  lead,
  shellId,
} from '../../test/builders.ts'
import { press } from '../../test/press.ts'
import { stageEnd } from './stage-end.ts'

const stage = aStage({ state: 'in work', startedAt: at(50), assemblies: [engineId] })
const ada = anActor(lead)
const end = (endedAt?: string, record = aRecord(stage, anEngine())) =>
  press(
    stageEnd,
    ada,
    record,
    endedAt === undefined ? { stage: stage.id } : { stage: stage.id, endedAt },
  )

describe('stage.end', () => {
  it('records the end of work, now or late', () => {
    expect(end()).toMatchObject({
      entities: [{ state: 'ended', endedAt: at(100), endedBy: ada.person }],
    })
    expect(end(at(60))).toMatchObject({ entities: [{ state: 'ended', endedAt: at(60) }] })
    expect(end(at(50))).toMatchObject({ outcome: 'changes' })
  })

  it('is never before the start, nor in the future', () => {
    expect(end(at(49.9))).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'time', field: 'endedAt', why: 'before the start', limit: at(50) }],
    })
    expect(end(at(100.1))).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'time', why: 'in the future', limit: at(100) }],
    })
  })

  it('is not moved by ending twice', () => {
    const over = aRecord({ ...stage, state: 'ended', endedAt: at(60) }, anEngine())
    expect(end(at(70), over)).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'state', is: 'ended' }],
    })
  })

  it('leaves what it fits on its host, and what it takes off in its hands', () => {
    const door = anAssembly({ name: 'Door', host: shellId })
    const engineIn = {
      ...stage,
      assemblies: [shellId, engineId],
      host: shellId,
      fits: [engineId],
      removes: [door.id],
    }
    expect(end(undefined, aRecord(engineIn, anEngine(), aShell(), door))).toMatchObject({
      entities: [
        { kind: 'stage', state: 'ended' },
        { ...door, host: null },
        { id: engineId, host: shellId, custodian: lead },
      ],
    })
  })

  it('remembers where it came off, so that a mistaken end can be taken back', () => {
    const door = anAssembly({ name: 'Door', host: shellId })
    const strip = { ...stage, assemblies: [], removes: [door.id] }
    expect(end(undefined, aRecord(strip, aShell(), door))).toMatchObject({
      entities: [{ host: shellId }, { id: door.id, host: null }],
    })
  })

  it('never fits a thing to what is fitted to it', () => {
    const odd = { ...stage, host: engineId, fits: [shellId] }
    expect(end(undefined, aRecord(odd, aShell(), anEngine({ host: shellId })))).toMatchObject({
      entities: [{ kind: 'stage' }],
    })
  })
})
