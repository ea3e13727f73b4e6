import * as z from 'zod/mini'
import library from '../averley-stages.json' with { type: 'json' }
import { plainStage, StageSpec } from '../spec.ts'

/** A stage as the library has it: trades in place of parties, no host, no handover. */
const Chosen = z.object({
  key: z.string(),
  group: z.string(),
  name: z.string(),
  trade: z.string(),
  assemblies: z.array(z.string()),
  hours: StageSpec.shape.hours,
  bay: z.string(),
  after: StageSpec.shape.after,
  fits: z.array(z.string()),
  removes: z.array(z.string()),
  needsFitted: z.array(z.string()),
  needsOff: z.array(z.string()),
  checks: StageSpec.shape.checks,
  point: StageSpec.shape.point,
  caution: z.nullable(z.string()),
  safety: z.boolean(),
})
type Chosen = z.infer<typeof Chosen>

/** Which party does the work of a trade, and whom a hold point of a trade names. */
const parties: { readonly [trade: string]: string } = {
  body_paint: 'tarn',
  mechanic: 'tarn',
  office: 'tarn',
  tyre: 'tarn',
  engine: 'bexwater',
  machine_shop: 'bexwater',
  gearbox: 'bexwater',
  blaster: 'hob',
  trimmer: 'thistle',
  glazier: 'ferrier',
  auto_electrician: 'quill',
  coater: 'northgate',
  plater: 'northgate',
  licensed_inspector: 'coldbrook',
  owner: 'owner',
}
const partyOf = (trade: string): string => parties[trade] ?? 'tarn'

/** Lead presents to owner and inspector, who hold; the lead strips the car; the trimmer has the samples made. */
const doneBy = ({ key, group, trade }: Chosen): string => {
  if (key === 'tri.sample') return 'thistle'
  if (group === 'strip' || trade === 'owner' || trade === 'licensed_inspector') return 'tarn'
  return partyOf(trade)
}

/** What this car asks for besides what the library says. */
const ours: { readonly [key: string]: Partial<StageSpec> } = {
  // A saloon has no hood.
  'str.trim': {
    assemblies: ['trim', 'seats', 'brightwork'],
    removes: ['trim', 'seats', 'brightwork', 'headlining', 'carpets'],
  },
  // The panels come off again once the gaps are agreed: the shell goes to the booth bare.
  'met.gapok': { removes: ['doors', 'bonnet', 'bootlid', 'wings'] },
  // Work on a card and in a tin holds nobody up who works on the shell.
  'col.card': { assemblies: [] },
  'col.batch': { assemblies: [] },
  'eng.strip': { removes: ['head', 'carburettors'], host: 'engine' },
  'eng.head': { fits: ['head'], host: 'engine' },
  'eng.dress': { name: 'Paint, dress: pump, manifolds, starter, dynamo, linkage' },
  'fue.carb': { name: 'Carburettors and pump rebuilt', assemblies: ['carburettors'] },
  'asm.bay': { assemblies: ['cooling', 'exhaust', 'fuel'], fits: ['cooling', 'exhaust', 'fuel'] },
  'eng.ready': { name: 'Engine ready to fit', handoverTo: 'tarn' },
  'gb.build': { handoverTo: 'tarn' },
  'ax.build': { handoverTo: 'tarn' },
  'loo.fit': { handoverTo: 'tarn' },
  'pla.plate': { handoverTo: 'tarn' },
  'coa.parts': { handoverTo: 'tarn' },
  'tri.head': { handoverTo: 'tarn' },
}

/** Readings that the engine must give on the run cell before it is ready to fit. */
const runCell: StageSpec['checks'] = [
  {
    name: 'cranking oil pressure, plugs out',
    type: 'reading',
    unit: 'bar',
    least: 1.8,
    greatest: 4,
  },
  {
    name: 'oil pressure hot, 3,000 rev/min',
    type: 'reading',
    unit: 'bar',
    least: 3.1,
    greatest: 4.5,
  },
  { name: 'compression spread, warm', type: 'reading', unit: '%', greatest: 10 },
]

const bays = new Set(['spray_booth', 'lift_bay'])

function asOurs(chosen: Chosen): StageSpec {
  const { trade: _trade, bay, point, ...stage } = chosen
  return {
    ...stage,
    party: doneBy(chosen),
    host: stage.fits.length + stage.removes.length > 0 ? 'shell' : null,
    needsBay: bays.has(bay) || stage.key === 'tri.head',
    point: point === null ? null : { ...point, who: partyOf(point.who) },
    handoverTo: null,
    checks: stage.key === 'eng.ready' ? [...runCell, ...stage.checks] : stage.checks,
    ...ours[stage.key],
  }
}

/** The carburettors go on after the engine is in. */
const carburettorsOn: StageSpec = plainStage('asm.carbs', 'tarn', 'Carburettors on, linkage set', {
  group: 'assembly',
  assemblies: ['carburettors'],
  fits: ['carburettors'],
  host: 'engine',
  hours: [3, 5, 8],
  after: [
    { key: 'asm.bay', least: 0 },
    { key: 'fue.carb', least: 0 },
  ],
  checks: [
    { name: 'full throttle at full pedal', type: 'tick' },
    { name: 'no drip at the unions', type: 'tick' },
  ],
  caution: 'Fuel vapour: no sparks, extinguisher at hand.',
  safety: true,
})

const chosen = z.array(Chosen).parse(library.stages)

/** The build order of the Averley: stages chosen from our own library, and one of its own. */
export const averleyStages: readonly StageSpec[] = chosen.flatMap((stage) => {
  const spec = asOurs(stage)
  if (stage.key === 'fir.fill')
    return [carburettorsOn, { ...spec, after: [...spec.after, { key: 'asm.carbs', least: 0 }] }]
  return [spec]
})
