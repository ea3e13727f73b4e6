import type { CommandRequest } from '../../command/wire.ts'
import { shopCommandNames } from '../../record/command-names.ts'
import { Instant } from '../../record/scalars.ts'
import { inputLines, pressLine } from '../../words/press-line.ts'
import type { Unsent } from '../phone/phone-store.ts'
import { filesNamed, lanesOf } from './overlay.ts'
import type { WherePressed } from './use-where-pressed.ts'

const ofShop: ReadonlySet<string> = new Set(shopCommandNames)

/** A command as it lies in the queue; null where the screen stands in no record that it is about. */
export function itemOf(request: CommandRequest, where: WherePressed): Unsent | null {
  const { person, personName, project, shop } = where
  const common = {
    person,
    personName,
    request,
    pressedAt: Instant.parse(request.happenedAt),
    path: `${location.pathname}${location.search}`,
    no: null,
  }
  if (ofShop.has(request.name)) {
    if (shop === null) return null
    const own = shop.book.shops.rows.get(shop.book.id)
    return {
      ...common,
      lanes: [shop.book.id],
      files: [],
      label: pressLine(request.name, request.input, null),
      entered: inputLines(request.input, { ...shop.place, currency: own?.currency ?? 'GBP' }),
      where: own?.name ?? 'The shop',
    }
  }
  if (project === null) return null
  const { record } = project
  return {
    ...common,
    lanes: lanesOf(request, project, record.id),
    files: filesNamed(request, project),
    label: pressLine(request.name, request.input, record),
    entered: inputLines(request.input, project.reader),
    where: record.projects.rows.get(record.id)?.name ?? 'The car',
  }
}
