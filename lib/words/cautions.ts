import type { Hazard } from '../record/entities/work.ts'

/** The usual caution against one hazard: a reminder at the bench, never a licence and never a clearance. */
export interface Caution {
  readonly title: string
  /** One to three short sentences. */
  readonly says: readonly string[]
}

/** What outranks every caution; it stands under them wherever they are shown. */
export const OUTRANKED_BY =
  'The maker’s data sheet, local rules and licensed practice come before these words. Nothing here clears a person, a place or a car.'

/**
 * The cautions by hazard, in our own words.
 * Read: air-fed breathing and clearance time, closed draining of petrol, tanks that explode when heated, welding fume,
 * asbestos in old linings, lifting tackle in date (HSE pages on motor vehicle repair and asbestos, leaflets INDG314 and
 * INDG422), glycol fluid on paint (fluid makers' notes). From memory: lead in old paint, glycol as a poison.
 * All else is common practice.
 */
const cautions: { readonly [H in Hazard]: Caution } = {
  isocyanate: {
    title: 'Two-pack paint',
    says: [
      'The mist harms the lungs for good, also where nothing is smelt: spray in air-fed breathing apparatus and keep it on until outside or until the clearance time has run.',
      'Nobody goes in unprotected before that.',
      'Sprayers’ health checks are to be in date.',
    ],
  },
  dust: {
    title: 'Dust',
    says: [
      'Catch it where it is made: sand wet or with extraction, and wear a mask that fits and suits this dust.',
      'Vacuum it up, never blow it off.',
    ],
  },
  solvent: {
    title: 'Solvents and fire',
    says: [
      'Vapour creeps along the floor to a flame, a heater or a switch: no spark near, air moving, lids on.',
      'Gloves that stand up to it, eyes covered.',
      'Soaked rags go into a closed metal bin: they can take fire by themselves.',
    ],
  },
  'hot work': {
    title: 'Hot work',
    says: [
      'No welding, cutting or grinding with the tank, its lines or a fuel can in the bay: an empty tank explodes too, and only a specialist makes one gas-free.',
      'Battery off, extinguisher manned, lining and loom out of the way, fume drawn off and breathing protected.',
      'Somebody watches for fire afterwards, for as long as the permit says.',
    ],
  },
  lifting: {
    title: 'Lifting',
    says: [
      'Tackle in date, marked for more than the load, slung as its maker shows.',
      'Nobody under what hangs, and one person gives the signs.',
    ],
  },
  springs: {
    title: 'Springs and stored energy',
    says: [
      'A spring, strut, torsion bar or gas damper lets go all at once: use the compressor made for it and stand out of its line.',
      'Take the load off before the last bolt comes out.',
    ],
  },
  fuel: {
    title: 'Fuel',
    says: [
      'Drain it with a closed retriever, outside or with the vapour drawn off, away from pits, drains and sparks.',
      'No lamp that isn’t made for it; extinguisher at hand; spills up at once.',
    ],
  },
  battery: {
    title: 'Batteries',
    says: [
      'Charging makes a gas that explodes and the acid burns: air, no spark, eyes covered.',
      'Off by the earth lead and tagged before strip, loom or welding; first power goes through a small fuse and an isolator.',
    ],
  },
  brakes: {
    title: 'Brake hydraulics',
    says: [
      'One kind of fluid, from a sealed can, as the maker says: glycol and silicone are never mixed.',
      'Glycol fluid ruins paint and eyes: covers on, rinse with water at once.',
      'Brakes are looked over by a second person than the fitter, and a licensed inspector has the last word.',
    ],
  },
  coolant: {
    title: 'Coolant',
    says: [
      'Antifreeze is poisonous and tastes sweet: cans shut, spills up, children and pets out.',
      'Never open a hot cap: it scalds.',
    ],
  },
  'rotating parts': {
    title: 'Turning parts, first start',
    says: [
      'Sleeves, hair and tools clear of fan, belt and shafts; nobody in line with them.',
      'At a first start: wheels chocked, out of gear, exhaust led outside, fuel looked at for leaks, isolator in reach and the extinguisher in somebody’s hands.',
    ],
  },
  'high pressure': {
    title: 'High pressure',
    says: [
      'A jet of air, grease, fuel or fluid goes through skin: never feel for a leak by hand, and an injected hand goes to hospital at once.',
      'Let the pressure off and see the gauge at nought before a joint is opened.',
    ],
  },
  chemicals: {
    title: 'Chemicals',
    says: [
      'Strippers, acids and rust removers burn: gloves, face shield and apron that the data sheet names, water at hand.',
      'Acid into water, never water into acid; nothing poured together that its sheet doesn’t allow.',
    ],
  },
  asbestos: {
    title: 'Asbestos',
    says: [
      'Old linings, clutches, gaskets and sound-deadening may hold it: treat as asbestos until tested.',
      'Never blow, brush or sand it; keep it wet, bag it as asbestos waste, and leave more than that to a licensed firm.',
      'Old stock that holds it is not fitted again.',
    ],
  },
  lead: {
    title: 'Lead',
    says: [
      'Old paint and body solder may hold lead: swab it first.',
      'No dry sanding and no flame on it, dust kept in, hands and face washed before food.',
    ],
  },
  cutting: {
    title: 'Cutting and sharp edges',
    says: [
      'Cut panels and discs slice: cut-proof gloves at the edges, eyes and ears covered at the machine.',
      'Guards on, the disc fit for its speed, the work clamped.',
    ],
  },
  crushing: {
    title: 'Under the car',
    says: [
      'A jack lifts, stands hold: nobody goes under what only a jack or a hoist holds.',
      'Level hard floor, wheels chocked, push at the car before going under; turning frames pinned.',
    ],
  },
  structure: {
    title: 'Structure of the shell',
    says: [
      'Brace the openings and measure the diagonals before and after; one side at a time.',
      'Structural welds are looked at before sealer or paint hides them, by whoever local rules say may judge them.',
    ],
  },
  road: {
    title: 'On the road',
    says: [
      'Only with brakes, steering, lights and tyres looked over, insured and plated for it, and by a driver licensed for it.',
      'Go slowly first, with somebody to call; whether the car is fit for the road, a licensed inspector says.',
    ],
  },
}

/** The caution against a hazard. */
export const cautionFor = (hazard: Hazard): Caution => cautions[hazard]

const isHazard = (key: string): key is Hazard => Object.hasOwn(cautions, key)

/** Every hazard, in the order in which they are offered. */
export const everyHazard: readonly Hazard[] = Object.keys(cautions).filter(isHazard)
