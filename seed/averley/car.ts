import { aCar, type Car } from '../car.ts'
import type { Speakers } from '../moves.ts'
import type { CarSpec } from '../spec.ts'
import type { Crew } from '../work.ts'
import { averleyStages } from './build-order.ts'

const onShell = (key: string, name: string, pieces = 1) => ({ key, name, pieces, host: 'shell' })

const spec: CarSpec = {
  name: 'Averley Three-Litre',
  year: 1961,
  description: 'Saloon, straight-six. Ivory over oxblood leather. Chassis 3L/0417.',
  lead: 'tarn',
  manager: 'Mara Ellwood',
  owner: 'Ines Halloran',
  begun: '-36 Thu 9',
  comes: '-35 Mon 9',
  parties: [
    { key: 'bexwater', name: 'Bexwater Engines', role: 'shop', shop: 'bexwater' },
    { key: 'thistle', name: 'Thistle & Welt', role: 'shop', shop: 'thistle' },
    { key: 'northgate', name: 'Northgate Plating', role: 'shop', shop: 'northgate' },
    { key: 'ferrier', name: 'Ferrier Glass', role: 'shop', shop: 'ferrier' },
    { key: 'quill', name: 'Quill Electrical', role: 'shop', shop: 'quill' },
    { key: 'hob', name: 'Hob Lane Blasting', role: 'shop', bills: 'lead' },
    { key: 'coldbrook', name: 'Coldbrook Inspection', role: 'shop', shop: 'coldbrook' },
    { key: 'sallow', name: 'Sallow Street Castings', role: 'supplier' },
    { key: 'insurer', name: 'Brack & Low Insurers', role: 'observer', people: ['Una Low'] },
  ],
  assemblies: [
    { key: 'shell', name: 'Shell' },
    onShell('doors', 'Doors', 4),
    onShell('bonnet', 'Bonnet'),
    onShell('bootlid', 'Boot lid'),
    onShell('wings', 'Wings', 4),
    onShell('engine', 'Engine'),
    { key: 'head', name: 'Cylinder head', host: 'engine' },
    { key: 'carburettors', name: 'Carburettors', pieces: 3, host: 'engine' },
    onShell('gearbox', 'Gearbox'),
    onShell('prop', 'Propeller shaft'),
    onShell('axle', 'Rear axle'),
    onShell('front_susp', 'Front suspension'),
    onShell('rear_susp', 'Rear suspension'),
    onShell('steering', 'Steering'),
    onShell('brakes', 'Brakes'),
    onShell('wheels', 'Wheels', 5),
    onShell('fuel', 'Fuel tank and pump'),
    onShell('cooling', 'Radiator and hoses'),
    onShell('exhaust', 'Exhaust'),
    onShell('battery', 'Battery'),
    onShell('loom', 'Loom'),
    onShell('dash', 'Dash and instruments'),
    onShell('heater', 'Heater'),
    { key: 'electrics', name: 'Starter, dynamo, wiper motor' },
    onShell('glass', 'Glass', 8),
    onShell('brightwork', 'Brightwork', 14),
    onShell('headlining', 'Headlining'),
    onShell('seats', 'Seats', 3),
    onShell('trim', 'Door cards and panels'),
    onShell('carpets', 'Carpets'),
    { key: 'fasteners', name: 'Brackets and fasteners', pieces: 62 },
  ],
  stages: averleyStages,
}

/** The main car of the demonstration. */
export const averleyCar = (): Car => aCar(spec)

/** Whose hands work and who signs, on this car. */
export const crew: Crew = {
  tarn: ['Tobin Ashby', 'Mara Ellwood'],
  bexwater: ['Wyn Pardoe', 'Jory Wenlock'],
  thistle: ['Sorrel Penn', 'Sorrel Penn'],
  northgate: ['Ada Rusk', 'Ada Rusk'],
  quill: ['Ivo Quill', 'Ivo Quill'],
}

/** Who signs for what comes and goes; Hob Lane is told by telephone. */
export const speakers: Speakers = {
  owner: 'Ines Halloran',
  tarn: 'Mara Ellwood',
  bexwater: 'Jory Wenlock',
  thistle: 'Sorrel Penn',
  northgate: 'Ada Rusk',
  ferrier: 'Nell Osgood',
  quill: 'Ivo Quill',
}
