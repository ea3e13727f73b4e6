import type { Tinter } from '../record/entities/coating.ts'
import type { ColourId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { indexBy } from '../record/table.ts'

const tintersIn = indexBy<Tinter>((tinter) => (tinter.removedAt === null ? [tinter.colour] : []))

/** The formula of a colour as it stands, in the order in which it is weighed. */
export const formulaOf = (record: ProjectRecord, colour: ColourId): Tinter[] =>
  [...tintersIn(record.tinters, colour)].sort((a, b) => a.position - b.position)
