import type { Page } from '@playwright/test'
import { carPath, find, pathTo, shopPath } from './find.ts'

/** A screen as somebody of the demonstration opens it. */
export interface Screen {
  readonly name: string
  readonly who: string
  readonly path: (page: Page) => Promise<string>
}

const MARA = 'Mara Ellwood'
const INES = 'Ines Halloran'
const JORY = 'Jory Wenlock'
const SORREL = 'Sorrel Penn'
const SIL = 'Sil Harker'

const at = (path: string) => async () => path
const inShop = (screen: string) => async (page: Page) => `${await shopPath(page)}${screen}`
const inCar = (screen: string) => async (page: Page) => `${await carPath(page)}${screen}`
const inOther = (car: string, screen: string) => async (page: Page) =>
  `${await carPath(page, car)}${screen}`
const of = (kind: string, name: string) => (page: Page) => pathTo(page, kind, name)

const setUpOf = (stage: string) => async (page: Page) =>
  (await pathTo(page, 'stage', stage)).replace('/stages/', '/set-up/stages/')

async function claim(page: Page): Promise<string> {
  const { id } = await find(page, 'stage', ({ name }) => name?.startsWith('Headlining in') ?? false)
  return `${await carPath(page)}/windows?stage=${id}`
}

async function strippedSprings(page: Page): Promise<string> {
  const car = await carPath(page, 'Dunmore')
  const named = 'Springs and axles stripped, gauged'
  const { id } = await find(page, 'stage', ({ name }) => name === named, car)
  return `${car}/stages/${id}`
}

async function remarked(page: Page): Promise<string> {
  const { id } = await find(page, 'handover', ({ outcome }) => outcome === 'accepted with remarks')
  return `${await carPath(page)}/handovers/${id}`
}

/** The main screens, each for somebody whose press is on it, grouped by person so that each signs in once. */
export const screens: readonly Screen[] = [
  { name: 'projects-and-shops', who: MARA, path: at('/') },
  { name: 'day-sheet-lead', who: MARA, path: inShop('') },
  { name: 'diary', who: MARA, path: inShop('/diary') },
  { name: 'shop-people', who: MARA, path: inShop('/people') },
  { name: 'shop-set-up', who: MARA, path: inShop('/set-up') },
  { name: 'project-lead', who: MARA, path: inCar('') },
  { name: 'build-order', who: MARA, path: inCar('/build-order') },
  { name: 'set-up-stage-rework', who: MARA, path: setUpOf('Engine and gearbox into the bay') },
  { name: 'refused-start', who: MARA, path: of('stage', 'Engine and gearbox into the bay') },
  { name: 'stage-glass', who: MARA, path: of('stage', 'Screens and door glass') },
  { name: 'windows-lead', who: MARA, path: inCar('/windows') },
  { name: 'handovers', who: MARA, path: inCar('/handovers') },
  { name: 'handover-remarks', who: MARA, path: remarked },
  { name: 'handover-new', who: MARA, path: inCar('/handovers/new') },
  { name: 'change-orders-lead', who: MARA, path: inCar('/change-orders') },
  { name: 'change-order-new', who: MARA, path: inCar('/change-orders/new') },
  { name: 'decision-new', who: MARA, path: inCar('/decisions/new') },
  { name: 'parts', who: MARA, path: inCar('/parts') },
  { name: 'part', who: MARA, path: of('part', 'Windscreen') },
  { name: 'part-new', who: MARA, path: inCar('/parts/new') },
  { name: 'journal', who: MARA, path: inCar('/journal') },
  { name: 'people', who: MARA, path: inCar('/people') },
  { name: 'set-up', who: MARA, path: inCar('/set-up') },
  { name: 'set-up-stage', who: MARA, path: setUpOf('Engine and gearbox into the bay') },
  { name: 'import', who: MARA, path: inCar('/set-up/import') },
  { name: 'account-lead', who: MARA, path: inCar('/account') },
  { name: 'begin-a-project', who: MARA, path: at('/projects/new') },
  { name: 'your-account', who: MARA, path: at('/account') },
  { name: 'dunmore-build-order', who: MARA, path: inOther('Dunmore', '/build-order') },
  { name: 'owners-car', who: INES, path: inCar('') },
  { name: 'change-order', who: INES, path: of('changeOrder', 'Carburettors') },
  { name: 'change-order-approved', who: INES, path: of('changeOrder', 'Front floors') },
  { name: 'change-orders-owner', who: INES, path: inCar('/change-orders') },
  { name: 'decision', who: INES, path: of('decision', 'Which seat belts') },
  { name: 'decisions', who: INES, path: inCar('/decisions') },
  { name: 'account-owner', who: INES, path: inCar('/account') },
  {
    name: 'job-card',
    who: JORY,
    path: async (page) => `${await pathTo(page, 'stage', 'Engine ready to fit')}/job-card`,
  },
  { name: 'day-sheet-engines', who: JORY, path: inShop('') },
  { name: 'stage-in-work', who: JORY, path: of('stage', 'Engine ready to fit') },
  { name: 'stage-brought', who: JORY, path: of('stage', 'Carburettors re-bushed') },
  { name: 'stage-signed', who: JORY, path: of('stage', 'Gearbox rebuilt') },
  { name: 'claim', who: SORREL, path: claim },
  { name: 'stage-in-doubt', who: SORREL, path: of('stage', 'Door cards') },
  { name: 'project-trim', who: SORREL, path: inCar('') },
  { name: 'day-sheet-hand', who: SIL, path: inShop('') },
  { name: 'stage-hand', who: SIL, path: strippedSprings },
  { name: 'bench-sums', who: SIL, path: at('/sums') },
  { name: 'bench-mix', who: SIL, path: at('/sums/mix-correction') },
  { name: 'bench-dew-point', who: SIL, path: at('/sums/dew-point') },
]
