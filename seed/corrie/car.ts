import { aCar, type Car } from '../car.ts'
import { type CarSpec, plainStage, type StageSpec } from '../spec.ts'
import type { Crew } from '../work.ts'

const after = (...keys: readonly string[]) => keys.map((key) => ({ key, least: 0 }))

/** Mechanical only: the gearbox is out and on the bench. */
const stages: readonly StageSpec[] = [
  plainStage('arr.receive', 'bexwater', 'Receive the van', {
    assemblies: ['van'],
    hours: [1, 2, 3],
    checks: [{ name: 'four views', type: 'photo' }],
  }),
  plainStage('arr.survey', 'bexwater', 'Survey on the ramp, compression and road noises', {
    assemblies: ['van'],
    hours: [3, 5, 8],
    after: after('arr.receive'),
    checks: [{ name: 'compression spread', type: 'reading', unit: '%', greatest: 15 }],
  }),
  plainStage('arr.agree', 'bexwater', 'Scope and estimate agreed', {
    hours: [1, 1, 3],
    after: after('arr.survey'),
    point: { point: 'hold', who: 'owner', name: 'no work before signature' },
  }),
  plainStage('str.gearbox', 'bexwater', 'Gearbox and clutch out', {
    assemblies: ['gearbox', 'clutch'],
    host: 'van',
    removes: ['gearbox', 'clutch'],
    hours: [4, 6, 9],
    after: after('arr.agree'),
    checks: [{ name: 'engine held on its own stand', type: 'tick' }],
    caution: 'Heavy and awkward: gearbox jack, two people.',
  }),
  plainStage('gb.strip', 'bexwater', 'Gearbox stripped and measured', {
    group: 'gearbox',
    assemblies: ['gearbox'],
    hours: [4, 6, 10],
    after: after('str.gearbox'),
    checks: [
      { name: 'teeth and cones', type: 'photo' },
      { name: 'wear report', type: 'document' },
    ],
  }),
  plainStage('gb.build', 'bexwater', 'Gearbox rebuilt', {
    group: 'gearbox',
    assemblies: ['gearbox'],
    hours: [10, 15, 24],
    after: after('gb.strip'),
    checks: [
      { name: 'layshaft end float', type: 'reading', unit: 'mm', least: 0.05, greatest: 0.35 },
      { name: 'every gear by hand', type: 'tick' },
    ],
  }),
  plainStage('clu.plate', 'bexwater', 'Clutch: plate and release bearing', {
    group: 'gearbox',
    assemblies: ['clutch'],
    hours: [2, 3, 5],
    after: after('str.gearbox'),
  }),
  plainStage('eng.seals', 'bexwater', 'Rear crankshaft seal and sump gasket, engine in place', {
    group: 'engine',
    assemblies: ['van'],
    hours: [4, 6, 10],
    after: after('str.gearbox'),
    checks: [{ name: 'seal seat clean and dry', type: 'photo' }],
  }),
  plainStage('brk.shoes', 'bexwater', 'Brakes: shoes, wheel cylinders, lines', {
    group: 'brakes',
    assemblies: ['van'],
    hours: [8, 12, 18],
    after: after('arr.agree'),
    checks: [{ name: 'drum run-out', type: 'reading', unit: 'mm', greatest: 0.15 }],
    safety: true,
    caution: 'Old linings may hold asbestos: wet method, bagged, licensed waste.',
  }),
  plainStage('wax.under', 'tarn', 'Underside cleaned and waxed', {
    group: 'wax',
    assemblies: ['van'],
    needsBay: true,
    hours: [5, 8, 12],
    after: after('brk.shoes'),
    handoverTo: 'bexwater',
    caution: 'Solvent vapour: ventilate, no flame.',
  }),
  plainStage('asm.gearbox', 'bexwater', 'Gearbox and clutch in', {
    group: 'assembly',
    assemblies: ['gearbox', 'clutch'],
    fits: ['gearbox', 'clutch'],
    host: 'van',
    hours: [5, 8, 12],
    after: after('gb.build', 'clu.plate', 'eng.seals'),
    checks: [{ name: 'bell housing bolts', type: 'reading', unit: 'N·m', least: 30, greatest: 45 }],
  }),
  plainStage('ele.charge', 'quill', 'Charging circuit: alternator in place of the dynamo', {
    group: 'electrical',
    assemblies: ['van'],
    hours: [4, 6, 9],
    after: after('arr.agree'),
  }),
  plainStage('roa.test', 'bexwater', 'Road test in steps: 5, 30 miles', {
    group: 'road_test',
    assemblies: ['van'],
    hours: [3, 5, 8],
    after: after('asm.gearbox', 'brk.shoes'),
    point: { point: 'hold', who: 'owner', name: 'owner drives it' },
  }),
  plainStage('end.handover', 'bexwater', 'Handover: keys, papers', {
    group: 'handover',
    assemblies: ['van'],
    hours: [1, 1, 2],
    after: after('roa.test', 'wax.under', 'ele.charge'),
  }),
]

const spec: CarSpec = {
  name: 'Corrie Van',
  year: 1972,
  description: 'Panel van, four-cylinder, baker’s blue. Mechanical work only.',
  lead: 'bexwater',
  manager: 'Jory Wenlock',
  owner: 'Greta Moss',
  begun: '-6 Tue 11',
  comes: '-5 Mon 9',
  parties: [
    { key: 'tarn', name: 'Tarn Lane Coachworks', role: 'shop', shop: 'tarn' },
    { key: 'quill', name: 'Quill Electrical', role: 'shop', shop: 'quill' },
  ],
  assemblies: [
    { key: 'van', name: 'Van' },
    { key: 'gearbox', name: 'Gearbox', host: 'van' },
    { key: 'clutch', name: 'Clutch', host: 'van' },
  ],
  stages,
}

/** The third car. */
export const corrieCar = (): Car => aCar(spec)

/** Whose hands work and who signs, on this car. */
export const crew: Crew = {
  bexwater: ['Wyn Pardoe', 'Jory Wenlock'],
  tarn: ['Tobin Ashby', 'Mara Ellwood'],
}
