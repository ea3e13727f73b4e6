import { describe, expect, it } from 'vitest'
import {
  aHold,
  aLink,
  anActor,
  anEngine,
  anId,
  aRecord,
  aStage,
  at,
  engineId,
  engineShop,
  lead,
} from '../../test/builders.ts'
import { press, pressed } from '../../test/press.ts'
import { must } from '../record/table.ts'
import { holdRelease } from './hold-release.ts'
import { holdWaive } from './hold-waive.ts'
import { stageCountersign } from './stage-countersign.ts'
import { stageEnd } from './stage-end.ts'
import { stagePause } from './stage-pause.ts'
import { stageReopen } from './stage-reopen.ts'
import { stageReportDone } from './stage-report-done.ts'
import { stageResume } from './stage-resume.ts'
import { stageSignOff } from './stage-sign-off.ts'
import { stageStart } from './stage-start.ts'
import { stageTakeBack } from './stage-take-back.ts'

const wyn = anActor(engineShop, { person: anId('psn', 'wyn') })
const jory = anActor(engineShop, { person: anId('psn', 'jory') })
const pru = anActor(engineShop, { person: anId('psn', 'pru') })
const stage = aStage({
  party: engineShop,
  number: 38,
  assemblies: [engineId],
  countersigns: [engineShop],
})
const hold = aHold({ stage: stage.id, party: engineShop })
const planned = aRecord(stage, hold, anEngine({ custodian: engineShop }))
const input = { stage: stage.id }
const started = pressed(stageStart, jory, planned, input)
const paused = pressed(stagePause, jory, started, input)
const resumed = pressed(stageResume, wyn, paused, input)
const own = { outcome: 'refusal', conditions: [{ rule: 'own-work' }] }

describe('nobody clears their own work', () => {
  it('who only went on with it after a pause did the work too', () => {
    const over = pressed(stageEnd, jory, resumed, input)
    expect(press(holdRelease, wyn, over, { hold: hold.id })).toMatchObject(own)
    expect(press(holdRelease, pru, over, { hold: hold.id }).outcome).toBe('changes')
    const signed = pressed(stageSignOff, pru, over, input)
    expect(press(stageCountersign, wyn, signed, input)).toMatchObject(own)
    expect(press(stageCountersign, pru, signed, input).outcome).toBe('changes')
  })

  it('who enters what was told by phone, or only pauses it, did none', () => {
    const leads = anActor(lead)
    const told = { ...input, told: engineShop }
    const byPhone = pressed(stageEnd, leads, pressed(stageStart, leads, planned, told), told)
    expect(must(byPhone.stages, stage.id)).toMatchObject({ workedBy: [], endedBy: null })
    const held = pressed(stagePause, pru, started, input)
    expect(press(holdRelease, pru, held, { hold: hold.id }).outcome).toBe('changes')
  })

  it('a release by who goes on to end the work, or to work on it, counts no more', () => {
    const released = pressed(holdRelease, pru, started, { hold: hold.id, remark: 'Seen.' })
    const again = { id: hold.id, state: 'set', clearedAt: null, clearedBy: null, remark: null }
    const ends = { ...input, end: { endedAt: at(100) } }
    for (const over of [
      pressed(stageEnd, pru, released, input),
      pressed(stageSignOff, pru, released, ends),
      pressed(stageResume, pru, pressed(stagePause, jory, released, input), input),
    ])
      expect(must(over.holds, hold.id)).toMatchObject(again)
    const byJory = pressed(stageEnd, jory, released, input)
    expect(must(byJory.holds, hold.id).state).toBe('released')
  })

  it('a witness point waived by who then does the work, or reports it as done, is set again', () => {
    const witness = { ...hold, point: 'witness' as const }
    const waived = pressed(
      holdWaive,
      pru,
      aRecord(stage, witness, anEngine({ custodian: engineShop })),
      {
        hold: hold.id,
      },
    )
    const done = { ...input, startedAt: at(98), endedAt: at(99), reason: 'On a Sunday.' }
    for (const record of [
      pressed(stageStart, pru, waived, input),
      pressed(stageReportDone, pru, waived, done),
    ])
      expect(must(record.holds, hold.id).state).toBe('set')
    expect(must(pressed(stageStart, jory, waived, input).holds, hold.id).state).toBe('waived')
  })

  it('what was signed off on such a release stands in doubt', () => {
    const released = pressed(holdRelease, pru, started, { hold: hold.id })
    const next = aStage({ state: 'signed off', startedAt: at(20), endedAt: at(30) })
    const record = aRecord(
      [...released.stages.rows.values(), ...released.holds.rows.values()],
      next,
      aLink({ from: stage.id, to: next.id }),
      anEngine({ custodian: engineShop }),
    )
    const ended = press(stageEnd, pru, record, input)
    expect(ended).toMatchObject({
      entities: [
        { id: stage.id, state: 'ended' },
        { id: hold.id, state: 'set' },
        { id: next.id, state: 'in doubt', doubt: hold.name },
      ],
    })
  })

  it('work stays somebody’s when it is reopened and another goes on with it; a mistaken press is nobody’s', () => {
    const signed = pressed(stageSignOff, pru, pressed(stageEnd, wyn, started, input), input)
    const reason = { ...input, reason: 'It weeps.' }
    const reopened = pressed(stageReopen, anActor(lead), signed, reason)
    const redone = pressed(stageEnd, pru, pressed(stageStart, pru, reopened, input), input)
    for (const hand of [jory, wyn, pru])
      expect(press(holdRelease, hand, redone, { hold: hold.id })).toMatchObject(own)
    const mistaken = pressed(stageTakeBack, wyn, pressed(stageEnd, wyn, started, input), reason)
    expect(press(holdRelease, wyn, mistaken, { hold: hold.id }).outcome).toBe('changes')
    expect(must(pressed(stageTakeBack, jory, started, reason).stages, stage.id)).toEqual(stage)
  })
})
