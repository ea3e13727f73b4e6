import type { Context } from '../record/command.ts'
import type { Part, PartPromise } from '../record/entities/things.ts'
import type { PartyId } from '../record/ids.ts'
import type { CivilDate } from '../record/scalars.ts'

/** A day promised for a part by somebody; what was promised before is kept beside it. */
export const newPromise = (
  part: Part,
  date: CivilDate,
  by: PartyId,
  remark: string,
  ctx: Context,
): PartPromise => ({
  kind: 'promise',
  id: ctx.newId('prm'),
  project: part.project,
  part: part.id,
  date,
  by,
  madeAt: ctx.happenedAt,
  remark,
})
