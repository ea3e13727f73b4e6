import type { ProjectView, ShopView } from '../../command/wire.ts'
import { entitiesOf, stubsOf } from '../../record/any-entity.ts'
import type { Instant } from '../../record/scalars.ts'
import { all } from '../../record/table.ts'
import type { ProjectState } from '../project-state.ts'
import type { ShopState } from '../shop-state.ts'

/** What the server would send of a project as this phone holds it; `projectStateOf` makes the same of it again. */
export function viewOfProject(state: ProjectState, now: Instant): ProjectView {
  const { record, view, person, people, shops, bays, members, epoch } = state
  return {
    record: record.id,
    view,
    person,
    version: record.version,
    epoch,
    now,
    entities: entitiesOf(record),
    stubs: stubsOf(record),
    versions: Object.fromEntries(record.versions),
    people,
    shops,
    bays,
    members,
  }
}

/** What the server would send of a shop book as this phone holds it. */
export function viewOfShop(state: ShopState, now: Instant): ShopView {
  const { book, role, person, people, projects, epoch } = state
  return {
    record: book.id,
    role,
    person,
    version: book.version,
    epoch,
    now,
    entities: [...all(book.shops), ...all(book.memberships), ...all(book.bays), ...all(book.slots)],
    people,
    projects,
  }
}
