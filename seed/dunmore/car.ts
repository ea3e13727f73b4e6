import { aCar, type Car } from '../car.ts'
import type { Speakers } from '../moves.ts'
import { type CarSpec, plainStage, type StageSpec } from '../spec.ts'
import type { Crew } from '../work.ts'

const after = (...keys: readonly string[]) => keys.map((key) => ({ key, least: 0 }))
const ISOCYANATES =
  'Two-pack sprays hold isocyanates: air-fed breathing apparatus, clearance time before the mask comes off, health surveillance. Data sheet and local rules govern.'

/** Coachbuilt on an ash frame: the body is off, the chassis and the steel stand in bare metal. */
const stages: readonly StageSpec[] = [
  plainStage('arr.receive', 'tarn', 'Receive the car: custody, papers, photographs all round', {
    assemblies: ['chassis'],
    hours: [2, 3, 5],
    checks: [{ name: 'eight views', type: 'photo' }],
  }),
  plainStage('arr.survey', 'tarn', 'Survey of frame, skins and chassis', {
    assemblies: ['body', 'chassis'],
    hours: [8, 12, 18],
    after: after('arr.receive'),
    checks: [{ name: 'ash frame: every joint sounded', type: 'document' }],
  }),
  plainStage('arr.agree', 'tarn', 'Scope and estimate agreed', {
    after: after('arr.survey'),
    hours: [2, 3, 6],
    checks: [{ name: 'signed scope and estimate', type: 'document' }],
    point: { point: 'hold', who: 'owner', name: 'no strip before signature' },
  }),
  plainStage('str.trim', 'tarn', 'Trim, glass and fabric top off, listed', {
    assemblies: ['trim', 'glass'],
    host: 'body',
    removes: ['trim', 'glass'],
    hours: [10, 16, 24],
    after: after('arr.agree'),
    checks: [{ name: 'each item in place before removal', type: 'photo' }],
  }),
  plainStage('str.engine', 'tarn', 'Engine and gearbox out', {
    assemblies: ['engine'],
    host: 'chassis',
    removes: ['engine'],
    needsBay: true,
    hours: [8, 12, 18],
    after: after('str.trim'),
    checks: [{ name: 'lifting tackle in examination date', type: 'tick' }],
    caution: 'Suspended load: nobody under it.',
  }),
  plainStage('str.body', 'tarn', 'Body lifted off the chassis, springs and tank out', {
    assemblies: ['body'],
    host: 'chassis',
    removes: ['body', 'running', 'tank'],
    hours: [6, 10, 16],
    after: after('str.engine'),
    checks: [{ name: 'mounts and packings by place', type: 'photo' }],
    caution: 'Braced before it is lifted: an old frame folds.',
  }),
  plainStage('str.skins', 'tarn', 'Wings and bonnet off, skins eased off the frame', {
    assemblies: ['skins'],
    host: 'body',
    removes: ['skins'],
    hours: [14, 24, 40],
    after: after('str.body'),
    checks: [{ name: 'each skin tagged', type: 'tick' }],
  }),
  plainStage('met.blast', 'hob', 'Chassis, wings and skins blasted to bare metal', {
    group: 'metal',
    assemblies: ['chassis', 'skins'],
    hours: [8, 12, 18],
    after: after('str.skins'),
    checks: [{ name: 'thin skins: fine grade, low pressure', type: 'tick' }],
    caution: 'Air-fed helmet, static earthed hose, dust extraction.',
  }),
  plainStage('met.wash', 'tarn', 'Bare metal washed with phosphate, dried warm', {
    group: 'metal',
    assemblies: ['chassis', 'skins'],
    hours: [2, 4, 6],
    after: after('met.blast'),
    checks: [{ name: 'surface temperature', type: 'reading', unit: '°C', least: 15, greatest: 30 }],
    caution: 'Acid: eyes, hands.',
  }),
  plainStage('met.hold', 'tarn', 'Epoxy hold coat on chassis and skins', {
    group: 'epoxy',
    assemblies: ['chassis', 'skins'],
    needsBay: true,
    hours: [6, 9, 14],
    after: [{ key: 'met.wash', least: 1, greatest: 72 }],
    checks: [
      { name: 'relative humidity', type: 'reading', unit: '%', greatest: 85 },
      { name: 'dry film thickness', type: 'reading', unit: 'µm', least: 50, greatest: 120 },
    ],
    caution: ISOCYANATES,
  }),
  plainStage('fra.scarf', 'tarn', 'Ash frame: rotten rails scarfed in, joints glued', {
    group: 'frame',
    assemblies: ['body'],
    hours: [40, 70, 120],
    after: after('str.skins'),
    checks: [
      { name: 'door opening diagonals', type: 'reading', unit: 'mm', least: -3, greatest: 3 },
    ],
  }),
  plainStage('fra.soak', 'tarn', 'Frame soaked with thin epoxy', {
    group: 'frame',
    assemblies: ['body'],
    hours: [4, 6, 9],
    after: after('fra.scarf'),
    checks: [{ name: 'every end grain wet', type: 'tick' }],
    caution: 'Epoxy sensitises: gloves, sleeves, ventilation.',
  }),
  plainStage('fra.skins', 'tarn', 'Skins back on the frame', {
    group: 'frame',
    assemblies: ['skins'],
    fits: ['skins'],
    host: 'body',
    hours: [30, 50, 90],
    after: [
      { key: 'fra.soak', least: 96 },
      { key: 'met.hold', least: 24 },
    ],
  }),
  plainStage('eng.metal', 'bexwater', 'Bearings cast in white metal, line-bored', {
    group: 'engine',
    assemblies: ['engine'],
    hours: [20, 32, 50],
    after: after('str.engine'),
    checks: [{ name: 'main clearance', type: 'reading', unit: 'mm', least: 0.04, greatest: 0.08 }],
    caution: 'Molten metal: dry ladle, face shield.',
  }),
  plainStage('eng.build', 'bexwater', 'Engine built, ready to fit', {
    group: 'engine',
    assemblies: ['engine'],
    hours: [30, 45, 70],
    after: after('eng.metal'),
    handoverTo: 'tarn',
  }),
  plainStage('fue.tank', 'tarn', 'Fuel tank boiled out, sealed inside', {
    group: 'fuel',
    assemblies: ['tank'],
    hours: [3, 5, 8],
    after: after('str.engine'),
    checks: [{ name: 'holds 20 kPa for ten minutes', type: 'tick' }],
    safety: true,
    caution: 'A tank is never empty of vapour: no flame, no spark, not even after boiling.',
  }),
  plainStage('cha.springs', 'tarn', 'Springs and axles stripped, gauged', {
    group: 'chassis',
    assemblies: ['running'],
    needsBay: true,
    hours: [12, 18, 30],
    after: after('str.body'),
    checks: [
      { name: 'camber of each spring', type: 'reading', unit: 'mm', least: 95, greatest: 110 },
      { name: 'leaves and eyes', type: 'photo' },
    ],
    caution: 'Springs hold stored force: proper clamp.',
    safety: true,
  }),
  plainStage('cha.black', 'tarn', 'Chassis black, springs and axles on', {
    group: 'chassis',
    assemblies: ['chassis'],
    hours: [20, 30, 50],
    after: [{ key: 'met.hold', least: 24, greatest: 336 }, ...after('cha.springs')],
    fits: ['running', 'tank'],
    host: 'chassis',
    safety: true,
  }),
  plainStage('asm.body', 'tarn', 'Body back on the chassis', {
    group: 'assembly',
    assemblies: ['body'],
    fits: ['body'],
    host: 'chassis',
    hours: [8, 12, 20],
    after: after('fra.skins', 'cha.black'),
  }),
  plainStage('col.body', 'tarn', 'Colour by brush and flat, body and wings', {
    group: 'colour',
    assemblies: ['body', 'skins'],
    needsBay: true,
    hours: [60, 90, 140],
    after: after('asm.body'),
    point: { point: 'hold', who: 'owner', name: 'colour accepted in daylight' },
  }),
  plainStage('tri.make', 'thistle', 'Seats, linings and top made', {
    group: 'trim',
    assemblies: ['trim'],
    hours: [60, 90, 150],
    after: after('str.trim'),
    checks: [{ name: 'top on its hoops, no seam proud', type: 'photo' }],
  }),
  plainStage('end.handover', 'tarn', 'Handover: keys, papers, running-in sheet', {
    group: 'handover',
    assemblies: ['chassis'],
    hours: [1, 2, 3],
    after: after('col.body', 'tri.make', 'eng.build'),
    point: { point: 'hold', who: 'owner', name: 'signature' },
  }),
]

const spec: CarSpec = {
  name: 'Dunmore Saloon',
  year: 1934,
  description: 'Coachbuilt on an ash frame, four-cylinder. Black over green. Chassis D 1187.',
  lead: 'tarn',
  manager: 'Mara Ellwood',
  owner: 'Piers Aldous',
  begun: '-15 Tue 10',
  comes: '-14 Mon 9',
  parties: [
    { key: 'bexwater', name: 'Bexwater Engines', role: 'shop', shop: 'bexwater' },
    { key: 'thistle', name: 'Thistle & Welt', role: 'shop', shop: 'thistle' },
    { key: 'hob', name: 'Hob Lane Blasting', role: 'shop', bills: 'lead' },
  ],
  assemblies: [
    { key: 'chassis', name: 'Chassis' },
    { key: 'body', name: 'Body', host: 'chassis' },
    { key: 'skins', name: 'Skins, wings and bonnet', pieces: 11, host: 'body' },
    { key: 'engine', name: 'Engine and gearbox', host: 'chassis' },
    { key: 'running', name: 'Springs and axles', pieces: 6, host: 'chassis' },
    { key: 'tank', name: 'Fuel tank', host: 'chassis' },
    { key: 'trim', name: 'Trim and fabric top', host: 'body' },
    { key: 'glass', name: 'Glass', pieces: 6, host: 'body' },
  ],
  stages,
}

/** The second car. */
export const dunmoreCar = (): Car => aCar(spec)

/** Whose hands work and who signs, on this car. */
export const crew: Crew = {
  tarn: ['Sil Harker', 'Mara Ellwood'],
  bexwater: ['Wyn Pardoe', 'Jory Wenlock'],
  thistle: ['Sorrel Penn', 'Sorrel Penn'],
}
/** Who signs for what comes and goes. */
export const speakers: Speakers = {
  tarn: 'Mara Ellwood',
  bexwater: 'Jory Wenlock',
  thistle: 'Sorrel Penn',
}
