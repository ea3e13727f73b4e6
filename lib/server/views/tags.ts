import type { TagFound } from '../../command/wire-access.ts'
import { tagCode } from '../../custody/tag-code.ts'
import { all } from '../../record/table.ts'
import { isSeen, see } from '../../see/see.ts'
import type { Looker } from '../lane/actor.ts'
import type { Reading } from './reading.ts'

/**
 * The assembly whose tag has that code, among all that this person may see; null for a code of another's car as for one that there is
 * none of, so that nothing is told.
 */
export async function findTag(
  reading: Reading,
  who: Looker,
  code: string,
): Promise<TagFound | null> {
  for (const id of await reading.projectsOf(who)) {
    const record = await reading.project(id)
    if (record === null) continue
    const assembly = all(record.assemblies).find((one) => tagCode(one.id) === code)
    const view = assembly === undefined ? null : await reading.viewOf(who, record)
    if (assembly === undefined || view === null) continue
    if (isSeen(see(view, record, assembly))) return { project: id, assembly: assembly.id }
  }
  return null
}
