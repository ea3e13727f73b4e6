import type { Step } from '../record/entities/evidence.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { indexBy } from '../record/table.ts'

const byStage = indexBy<Step>((step) => (step.removedAt === null ? [step.stage] : []))

/** The steps of a stage's procedure, in order. */
export const stepsOf = (record: ProjectRecord, stage: string): Step[] =>
  byStage(record.steps, stage).toSorted((a, b) => a.position - b.position)
