import { describe, expect, it } from 'vitest'
import {
  aHandover,
  aHold,
  aLink,
  anActor,
  anAssembly,
  anEngine,
  aRecord,
  aShell,
  aStage,
  at,
  engineId,
  engineShop,
  lead,
  shellId,
} from '../../test/builders.ts'
import { press, pressed } from '../../test/press.ts'
import { must } from '../record/table.ts'
import { stageCorrectEnd } from './stage-correct-end.ts'
import { stageEnd } from './stage-end.ts'
import { stageSignOff } from './stage-sign-off.ts'
import { stageStart } from './stage-start.ts'
import { stageTakeBack } from './stage-take-back.ts'

const ada = anActor(lead)
const reason = 'Pressed on the wrong card.'
const door = anAssembly({ name: 'Door', host: shellId })
const stage = aStage({
  assemblies: [engineId, shellId],
  host: shellId,
  fits: [engineId],
  removes: [door.id],
  handoverTo: engineShop,
})
const planned = aRecord(stage, anEngine(), aShell(), door)
const started = pressed(stageStart, ada, planned, { stage: stage.id })
const over = pressed(stageEnd, ada, started, { stage: stage.id })
const signed = pressed(stageSignOff, ada, over, { stage: stage.id })
const input = { stage: stage.id, reason }

describe('stage.takeBack', () => {
  it('takes a mistaken start back to planned', () => {
    const back = pressed(stageTakeBack, ada, started, input)
    expect(must(back.stages, stage.id)).toEqual(stage)
  })

  it('takes an end back to work, and what it fitted or took off to where it was', () => {
    const back = pressed(stageTakeBack, ada, over, input)
    expect(must(back.stages, stage.id)).toEqual(must(started.stages, stage.id))
    expect(must(over.assemblies, engineId).host).toBe(shellId)
    expect(must(back.assemblies, engineId)).toEqual(anEngine())
    expect(must(back.assemblies, door.id)).toEqual(door)
  })

  it('takes a sign-off back to ended, with its signature and the handover that it prepared', () => {
    const back = pressed(stageTakeBack, ada, signed, input)
    expect(must(back.stages, stage.id)).toEqual(must(over.stages, stage.id))
    expect([...back.signOffs.rows.values()]).toMatchObject([{ withdrawnAt: at(100), reason }])
    expect([...back.handovers.rows.values()]).toMatchObject([{ state: 'taken back' }])
    const again = pressed(stageSignOff, ada, back, { stage: stage.id })
    expect([...again.handovers.rows.values()].map(({ state }) => state)).toEqual([
      'taken back',
      'prepared',
    ])
  })

  it('refuses once what follows has begun: then the stage is reopened', () => {
    const next = aStage({ state: 'in work', startedAt: at(100) })
    const link = aLink({ from: stage.id, to: next.id })
    const begun = aRecord([...signed.stages.rows.values()], next, link, anEngine(), aShell(), door)
    expect(press(stageTakeBack, ada, begun, input)).toMatchObject({
      outcome: 'refusal',
      conditions: [
        {
          rule: 'state',
          entity: next.id,
          clearedWith: { command: 'stage.reopen', input: { stage: stage.id } },
        },
      ],
    })
  })

  it('refuses once the handover has left the shop', () => {
    const signedStage = must(signed.stages, stage.id)
    const gone = aHandover({
      stage: stage.id,
      from: lead,
      to: engineShop,
      state: 'released',
      preparedAt: at(100),
      releasedAt: at(101),
    })
    expect(press(stageTakeBack, ada, aRecord(signedStage, gone), input)).toMatchObject({
      conditions: [{ entity: gone.id, clearedWith: { command: 'handover.takeBack' } }],
    })
  })

  it('never puts two at one assembly: an end is not taken back while another works there', () => {
    const other = aStage({ assemblies: [engineId], state: 'in work', startedAt: at(100) })
    const busy = aRecord(
      [...over.stages.rows.values()],
      other,
      aShell(),
      door,
      anEngine({ host: shellId }),
    )
    expect(press(stageTakeBack, ada, busy, input)).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'exclusive-use', stage: other.id }],
    })
  })

  it('refuses a start on which a hold point was released meanwhile', () => {
    const hold = aHold({ stage: stage.id, state: 'released', clearedAt: at(100) })
    const record = aRecord([...started.stages.rows.values()], hold)
    expect(press(stageTakeBack, ada, record, input)).toMatchObject({
      conditions: [{ entity: hold.id, clearedWith: { command: 'hold.takeBack' } }],
    })
  })

  it('takes a restart back to reopened, not to planned', () => {
    const again = { ...stage, state: 'in work' as const, startedAt: at(90), doubt: 'It weeps.' }
    expect(press(stageTakeBack, ada, aRecord(again), input)).toMatchObject({
      entities: [{ state: 'reopened', doubt: 'It weeps.' }],
    })
  })

  it('lets the lead take back what it entered by phone, but never another party’s sign-off', () => {
    const theirs = aStage({ party: engineShop, state: 'ended', startedAt: at(1), endedAt: at(2) })
    const engine = anEngine({ custodian: engineShop })
    const outcome = (record: ReturnType<typeof aRecord>) =>
      press(stageTakeBack, ada, record, { stage: theirs.id, reason }).outcome
    expect(outcome(aRecord(theirs, engine))).toBe('changes')
    expect(outcome(aRecord({ ...theirs, state: 'signed off' }, engine))).toBe('forbidden')
  })

  it('has nothing to take back on a planned stage', () => {
    expect(press(stageTakeBack, ada, planned, input)).toMatchObject({
      conditions: [{ rule: 'state', is: 'planned' }],
    })
  })
})

describe('stage.correctEnd', () => {
  const coat = aStage({
    state: 'signed off',
    startedAt: at(1),
    endedAt: at(10),
    signedOffAt: at(11),
  })
  const next = aStage({
    state: 'signed off',
    startedAt: at(40),
    endedAt: at(50),
    signedOffAt: at(51),
  })
  const last = aStage({
    state: 'signed off',
    startedAt: at(60),
    endedAt: at(61),
    signedOffAt: at(62),
  })
  const record = aRecord(
    coat,
    next,
    last,
    aLink({ from: coat.id, to: next.id, leastLagHours: 24 }),
    aLink({ from: next.id, to: last.id }),
  )
  const correct = (endedAt: string, why: string | undefined = reason) =>
    press(stageCorrectEnd, ada, record, { stage: coat.id, endedAt, reason: why })

  it('changes the end of work only with a reason, and within what can be', () => {
    expect(correct(at(12))).toMatchObject({ entities: [{ id: coat.id, endedAt: at(12) }] })
    expect(correct(at(12), '').outcome).toBe('invalid')
    expect(correct(at(0))).toMatchObject({ conditions: [{ why: 'before the start' }] })
    expect(correct(at(101))).toMatchObject({ conditions: [{ why: 'in the future' }] })
  })

  it('puts in doubt what was begun before the cure had run after all, and all that relied on it', () => {
    const corrected = correct(at(16.5))
    expect(corrected).toMatchObject({
      entities: [
        { id: coat.id },
        { id: next.id, state: 'in doubt', doubt: reason },
        { id: last.id, state: 'in doubt' },
      ],
    })
    const fine = correct(at(16))
    expect(fine.outcome === 'changes' && fine.entities).toHaveLength(1)
  })
})
