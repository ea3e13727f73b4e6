import { missingCheck } from '@/lib/build-order/check-add.ts'
import { plannedStage } from '@/lib/build-order/stage-fields.ts'
import { CheckId, PartyId, ProjectId, StageId } from '@/lib/record/ids.ts'

// Stages, checks and signatures of the sample, as they would come over the wire; sample.ts reads them.

const PROJECT = ProjectId.parse('prj_sample')
const began = '2027-02-09T08:05:00.000Z'

const stage = (id: string, number: number, name: string, more: object) => ({
  ...plannedStage(StageId.parse(id), PROJECT, number, name, PartyId.parse('pty_engines')),
  assemblies: ['asm_engine'],
  hoursLikely: 7,
  ...more,
})
const inWork = {
  state: 'in work',
  startedAt: began,
  startedBy: 'psn_jory',
  workedBy: ['psn_jory'],
}

const check = (id: string, position: number, name: string, more: object) => ({
  ...missingCheck(CheckId.parse(id), PROJECT, {
    stage: StageId.parse('stg_ready'),
    position,
    type: 'reading',
    name,
    unit: 'bar',
    least: null,
    greatest: null,
  }),
  ...more,
})
const read = { by: 'psn_jory', at: '2027-02-10T15:12:00.000Z' }

export const work: readonly unknown[] = [
  stage('stg_ready', 38, 'Engine ready to fit', {
    ...inWork,
    caution: 'Hot oil and turning parts. Stand clear of the belt line.',
    handoverTo: 'pty_lead',
  }),
  stage('stg_mounts', 39, 'Mounts fitted to engine', {}),
  stage('stg_engine', 80, 'Engine and gearbox in', { party: 'pty_lead' }),
  stage('stg_gearbox', 41, 'Strip and inspect gearbox', {
    ...inWork,
    assemblies: ['asm_gearbox'],
    state: 'signed off',
    signedOffAt: '2027-02-11T09:14:00.000Z',
    endedAt: '2027-02-11T09:00:00.000Z',
    endedBy: 'psn_jory',
  }),
  {
    kind: 'signOff',
    id: 'sgn_gearbox',
    project: PROJECT,
    stage: 'stg_gearbox',
    party: 'pty_engines',
    type: 'sign-off',
    person: 'psn_jory',
    at: '2027-02-11T09:14:00.000Z',
    withdrawnAt: null,
    reason: null,
  },
  check('chk_oil', 1, 'oil pressure, hot, 3,000 rev/min', {
    least: 3.1,
    greatest: 4.5,
    state: 'passed',
    value: 3.9,
    firstValue: 3.9,
    ...read,
  }),
  check('chk_flywheel', 2, 'flywheel run-out', {
    unit: 'mm',
    least: 0,
    greatest: 0.1,
    state: 'out of limits',
    value: 0.11,
    firstValue: 0.12,
    ...read,
  }),
  check('chk_ticked', 3, 'head bolts torqued in order', {
    type: 'tick',
    unit: null,
    state: 'passed',
    ...read,
  }),
  check('chk_missing', 4, 'compression spread, warm', { unit: '%', greatest: 10 }),
  {
    kind: 'concession',
    id: 'con_flywheel',
    project: PROJECT,
    stage: 'stg_ready',
    rule: 'check',
    entity: 'chk_flywheel',
    reason: 'Within the clutch maker’s 0.13.',
    file: null,
    needs: ['pty_engines', 'pty_lead'],
    parties: ['pty_engines', 'pty_lead'],
    person: 'psn_mara',
    at: '2027-02-10T16:00:00.000Z',
    withdrawnAt: null,
  },
]
