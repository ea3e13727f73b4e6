import { DeviceId, PersonId } from '../../record/ids.ts'
import type { Queryable } from '../load.ts'

/** Where a person stands: until when their sessions were ended, in ms, and what they were let into. */
export type Standing = {
  readonly endedMs: number
  /** Texts that begin with a record's id: `shp_…/hand`, `prj_…/pty_…`; of a shop also the cars it takes part in. */
  readonly grants: readonly string[]
}

const READ = `
select p."id", p."signedOutAt",
  array(select m."shop" || '/' || m."role" from "Membership" m where m."person" = p."id" and m."removedAt" is null
    union select c."project" || '/' || c."party" from "Participant" c where c."person" = p."id" and c."removedAt" is null
    union select unnest(array[y."project" || '/' || y."id", y."shop" || '/' || y."project"])
      from "Party" y join "Membership" m on m."shop" = y."shop"
      where m."person" = p."id" and m."removedAt" is null and y."leftAt" is null) as grants
from "Person" p where p."id" = any($1) and p."removedAt" is null`

interface Row {
  readonly id: string
  readonly signedOutAt: Date | null
  readonly grants: readonly string[]
}

/** Where those persons stand; who is not there any more is left out. */
export async function readStandings(
  db: Queryable,
  persons: ReadonlySet<PersonId>,
): Promise<ReadonlyMap<PersonId, Standing>> {
  const { rows } = await db.query<Row>({ name: 'standings', text: READ, values: [[...persons]] })
  return new Map(
    rows.map(({ id, signedOutAt, grants }) => [
      PersonId.parse(id),
      { endedMs: signedOutAt?.getTime() ?? 0, grants },
    ]),
  )
}

/** The records of grants that came or went. */
export function recordsThatDiffer(before: readonly string[], after: readonly string[]): string[] {
  const changed = [
    ...before.filter((grant) => !after.includes(grant)),
    ...after.filter((grant) => !before.includes(grant)),
  ]
  return [...new Set(changed.map((grant) => grant.split('/')[0] ?? ''))]
}

const READ_PHONES = `
select d."id", array(select d."shop" || '/hand' union
    select unnest(array[y."project" || '/' || y."id", d."shop" || '/' || y."project"])
      from "Party" y where y."shop" = d."shop" and y."leftAt" is null) as grants
from "ShopDevice" d where d."id" = any($1) and d."revokedAt" is null`

/** What shops' phones were let into; one that is out is left out. */
export async function readPhoneStandings(
  db: Queryable,
  phones: ReadonlySet<DeviceId>,
): Promise<ReadonlyMap<DeviceId, Pick<Standing, 'grants'>>> {
  const { rows } = await db.query<Pick<Row, 'id' | 'grants'>>({
    name: 'phone-standings',
    text: READ_PHONES,
    values: [[...phones]],
  })
  return new Map(rows.map(({ id, grants }) => [DeviceId.parse(id), { grants }]))
}
