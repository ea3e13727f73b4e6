import type { Kind } from './entity.ts'
import type { IdPrefix } from './ids.ts'

const prefixes = {
  project: 'prj',
  party: 'pty',
  participant: 'ptc',
  assembly: 'asm',
  stage: 'stg',
  link: 'lnk',
  check: 'chk',
  signOff: 'sgn',
  hold: 'hld',
  concession: 'con',
  ask: 'ask',
  handover: 'hnd',
  changeOrder: 'cho',
  changeLine: 'chl',
  estimateLine: 'esl',
  decision: 'dcs',
  decisionOption: 'opt',
  part: 'prt',
  promise: 'prm',
  openWindow: 'win',
  slot: 'slt',
  note: 'nte',
  told: 'tld',
  reading: 'rdg',
  airReading: 'air',
  metalReading: 'mtl',
  step: 'stp',
  coat: 'cot',
  film: 'flm',
  colour: 'clr',
  tinter: 'tnt',
  inDate: 'ind',
  milestone: 'mst',
  shop: 'shp',
  membership: 'mbr',
  bay: 'bay',
} as const satisfies { readonly [K in Kind]: IdPrefix }

const isKindName = (name: string): name is Kind => name in prefixes
const kinds: ReadonlyMap<string, Kind> = new Map(
  Object.keys(prefixes)
    .filter(isKindName)
    .map((kind) => [prefixes[kind], kind]),
)

/** The kind of entity whose ids begin as this one does; undefined where none does. */
export const kindOf = (id: string): Kind | undefined => kinds.get(id.slice(0, 3))
