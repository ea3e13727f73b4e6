import type { Context } from '../record/command.ts'
import type { Handover } from '../record/entities/things.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { countOf } from './count-of.ts'

/** A handover as it is prepared: nothing released yet. Pieces are counted where a lot goes along. */
export const newHandover = (
  record: ProjectRecord,
  given: Pick<Handover, 'assemblies' | 'from' | 'to' | 'stage'>,
  ctx: Context,
): Handover => ({
  kind: 'handover',
  id: ctx.newId('hnd'),
  project: record.id,
  ...given,
  state: 'prepared',
  condition: '',
  care: '',
  pieces: countOf(record, given.assemblies),
  files: [],
  preparedAt: ctx.happenedAt,
  releasedAt: null,
  releasedBy: null,
  receivedAt: null,
  receivedBy: null,
  receivedByName: null,
  signature: null,
  receivedPieces: null,
  outcome: null,
  remarks: null,
  receivedFiles: [],
})
