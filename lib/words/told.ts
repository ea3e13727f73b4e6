import type { PartyId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { atStart, does, listed, partyName } from './names.ts'
import type { Reader } from './reader.ts'

/** What a rule says of its condition; the rest of the sentence follows from the condition itself. */
export interface Told {
  readonly fact: string
  readonly detail?: string
  readonly since?: string
  readonly who?: string
}

/** `Bexwater Engines and you`, at the beginning of a sentence. */
export const parties = (ids: readonly PartyId[], record: ProjectRecord, reader: Reader): string =>
  atStart(
    listed(
      ids.map((id) => partyName(id, record, reader)),
      reader.locale,
      'or',
    ),
  )

/** `Bexwater Engines releases it.`, `You release it.` */
export function whoDoes(
  ids: readonly PartyId[],
  record: ProjectRecord,
  reader: Reader,
  you: string,
  others: string,
): string {
  const first = ids[0]
  if (first === undefined) return ''
  const verb = ids.length > 1 ? you : does(first, reader, you, others)
  return `${parties(ids, record, reader)} ${verb}.`
}
