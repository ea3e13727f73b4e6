import { projectPath, shopPath } from '@/app/_ui/paths.ts'
import type { ProjectState } from '@/lib/live/project-state.ts'
import type { ShopState } from '@/lib/live/shop-state.ts'
import { all } from '@/lib/record/table.ts'
import { stageNumber } from '@/lib/words/labels.ts'
import { partyName } from '@/lib/words/names.ts'
import type { PlaceToGo } from './nearest.ts'

const projectScreens = [
  ['', 'Project'],
  ['build-order', 'Build order'],
  ['handovers', 'Handovers'],
  ['change-orders', 'Change orders'],
  ['decisions', 'Decisions'],
  ['parts', 'Parts'],
  ['coating', 'Coating record'],
  ['windows', 'Slots and windows'],
  ['account', 'Account'],
  ['people', 'People'],
  ['journal', 'Journal'],
  ['tags', 'Tags'],
  ['set-up', 'Project set-up'],
] as const
/** Screens that are not for everybody: who sees sums, and who works on the car. */
const MONEY: ReadonlySet<string> = new Set(['account'])
const WORKS: ReadonlySet<string> = new Set(['set-up'])

const shopScreens = [
  ['', 'Day sheet'],
  ['diary', 'Shop diary'],
  ['people', 'People of the shop'],
  ['set-up', 'Shop set-up'],
] as const

/** Everywhere in one car that this view sees: stages, assemblies, change orders, parts, people and screens. */
export function placesInProject({ record, view, people, members }: ProjectState): PlaceToGo[] {
  const car = record.projects.rows.get(record.id)?.name ?? 'a car'
  const at = (screen: string) => projectPath(record.id, screen)
  const { role } = view
  const sees = (screen: string): boolean =>
    (!MONEY.has(screen) || role === 'owner' || role === 'manager') &&
    (!WORKS.has(screen) || role === 'manager' || role === 'hand')
  return [
    ...projectScreens
      .filter(([screen]) => sees(screen))
      .map(([screen, name]) => ({ path: at(screen), name, under: car })),
    ...all(record.stages)
      .filter(({ removedAt }) => removedAt === null)
      .toSorted((a, b) => a.number - b.number)
      .map(({ id, number, name, party }) => ({
        path: at(`stages/${id}`),
        name: `${stageNumber(number)} · ${name}`,
        under: `stage of ${partyName(party, record)} · ${car}`,
      })),
    ...all(record.assemblies).map(({ id, name, custodian }) => ({
      path: at(`assemblies/${id}`),
      name,
      under: `assembly, with ${partyName(custodian, record)} · ${car}`,
    })),
    ...all(record.changeOrders)
      .toSorted((a, b) => a.number - b.number)
      .map(({ id, number, title }) => ({
        path: at(`change-orders/${id}`),
        name: `${title ?? 'Between others'}`,
        under: `change order ${number} · ${car}`,
      })),
    ...all(record.parts)
      .filter(({ withdrawnAt }) => withdrawnAt === null)
      .map(({ id, name }) => ({ path: at(`parts/${id}`), name, under: `part · ${car}` })),
    ...members.flatMap(({ person, party }) => {
      const name = people[person]
      return name === undefined
        ? []
        : [{ path: at('people'), name, under: `of ${partyName(party, record)} · ${car}` }]
    }),
  ]
}

/** The screens of a shop. */
export function placesInShop({ book, role }: ShopState): PlaceToGo[] {
  const name = book.shops.rows.get(book.id)?.name ?? 'a shop'
  return shopScreens
    .filter(([screen]) => screen !== 'set-up' || role === 'manager')
    .map(([screen, title]) => ({ path: shopPath(book.id, screen), name: title, under: name }))
}

/** Places outside any car and shop. */
export const placesElsewhere: readonly PlaceToGo[] = [
  { path: '/', name: 'All projects and shops', under: 'where you belong' },
  { path: '/sums', name: 'Bench sums', under: 'mix, dew point, torque, gaps' },
  { path: '/scan', name: 'Scan a tag', under: 'by camera or code' },
  { path: '/account', name: 'Your account', under: 'how it looks, signing out' },
]
