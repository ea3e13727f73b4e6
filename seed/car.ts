import { ProjectId } from '../lib/record/ids.ts'
import type { ProjectRecord } from '../lib/record/project-record.ts'
import { all } from '../lib/record/table.ts'
import { plus } from './calendar.ts'
import type { CarSpec, StageSpec } from './spec.ts'
import { known, type Press, type Scene, type Yard } from './yard.ts'

/** One car of the demonstration, found by the keys of its spec once its project is begun. */
export interface Car {
  readonly spec: CarSpec
  readonly ids: Map<string, string>
  readonly id: () => ProjectId
  readonly record: (yard: Yard) => ProjectRecord
  readonly party: (key: string) => string
  readonly assembly: (key: string) => string
  readonly stage: (key: string) => string
  readonly stageSpec: (key: string) => StageSpec
  readonly press: (yard: Yard, press: Press) => ReturnType<Yard['press']>
}

/** A car of which nothing has been pressed yet. */
export function aCar(spec: CarSpec): Car {
  const ids = new Map<string, string>()
  const id = () => ProjectId.parse(known(ids, 'project'))
  const stages = new Map(spec.stages.map((stage) => [stage.key, stage]))
  const car: Car = {
    spec,
    ids,
    id,
    record: (yard) => yard.record(id()),
    party: (key) => known(ids, `party ${key}`),
    assembly: (key) => known(ids, `assembly ${key}`),
    stage: (key) => known(ids, `stage ${key}`),
    stageSpec: (key) => known(stages, key),
    press: (yard, press) => yard.press({ record: id(), ...press }),
  }
  return car
}

/** The project is begun, its parties asked, its build order set up; then the car comes from its owner. */
export function openingScenes(yard: Yard, car: Car): Scene[] {
  const begun = yard.calendar.at(car.spec.begun)
  const comes = yard.calendar.at(car.spec.comes)
  return [
    { at: begun, play: (yard) => begin(yard, car, begun) },
    { at: plus(begun, 60), play: (yard) => list(yard, car, plus(begun, 60)) },
    { at: plus(begun, 180), play: (yard) => setUp(yard, car, plus(begun, 180)) },
    { at: plus(comes, -20), play: (yard) => handOver(yard, car, plus(comes, -20)) },
    { at: comes, play: (yard) => receive(yard, car, comes) },
    { at: plus(comes, 20), play: (yard) => asItCame(yard, car, plus(comes, 20)) },
  ]
}

async function begin(yard: Yard, car: Car, at: Scene['at']): Promise<void> {
  const { spec } = car
  const who = spec.manager
  const made = await yard.press({
    at,
    who,
    name: 'project.create',
    input: {
      shop: known(yard.shops, spec.lead),
      name: spec.name,
      year: spec.year,
      description: spec.description,
      owner: spec.owner,
    },
  })
  for (const entity of made) {
    if (entity.kind === 'project') car.ids.set('project', entity.id)
    if (entity.kind === 'party') {
      car.ids.set(entity.lead ? `party ${spec.lead}` : 'party owner', entity.id)
    }
  }
  for (const party of spec.parties) {
    const [added] = await car.press(yard, {
      at,
      who,
      name: 'party.add',
      input: {
        name: party.name,
        role: party.role,
        ...(party.shop !== undefined && { shop: known(yard.shops, party.shop) }),
        ...(party.bills !== undefined && { bills: party.bills }),
      },
    })
    if (added !== undefined) car.ids.set(`party ${party.key}`, added.id)
  }
  const acting = [
    [spec.owner, 'owner'] as const,
    ...spec.parties.flatMap(({ key, people = [] }) =>
      people.map((person) => [person, key] as const),
    ),
  ]
  for (const [person, party] of acting) {
    const input = { party: car.party(party), person: yard.person(person) }
    await car.press(yard, { at, who, name: 'participant.add', input })
  }
}

async function list(yard: Yard, car: Car, at: Scene['at']): Promise<void> {
  for (const { key, name, pieces = 1 } of car.spec.assemblies) {
    const input = { name, pieces, custodian: car.party('owner') }
    const [added] = await car.press(yard, {
      at,
      who: car.spec.manager,
      name: 'assembly.add',
      input,
    })
    if (added !== undefined) car.ids.set(`assembly ${key}`, added.id)
  }
}

/** The build order comes as a spreadsheet's import does; then what its columns don't hold is said. */
async function setUp(yard: Yard, car: Car, at: Scene['at']): Promise<void> {
  const { stages, manager: who } = car.spec
  const key = (stage: string) => `line${stages.findIndex((spec) => spec.key === stage) + 1}`
  const made = await car.press(yard, {
    at,
    who,
    name: 'buildOrder.import',
    input: {
      parties: [],
      assemblies: [],
      stages: stages.map((spec) => ({
        key: key(spec.key),
        name: spec.name,
        party: car.party(spec.party),
        assemblies: spec.assemblies.map(car.assembly),
        hoursLeast: spec.hours[0],
        hoursLikely: spec.hours[1],
        hoursMost: spec.hours[2],
      })),
      links: stages.flatMap((spec) =>
        spec.after.map((after) => ({
          from: key(after.key),
          to: key(spec.key),
          leastLagHours: after.least,
          greatestLagHours: after.greatest ?? null,
        })),
      ),
      checks: stages.flatMap((spec) =>
        spec.checks.map((check) => ({
          stage: key(spec.key),
          type: check.type,
          name: check.name,
          unit: check.unit ?? null,
          least: check.least ?? null,
          greatest: check.greatest ?? null,
        })),
      ),
      holds: stages.flatMap(({ key: stage, point }) =>
        point === null
          ? []
          : [
              {
                stage: key(stage),
                point: point.point,
                name: point.name,
                party: car.party(point.who),
                person: null,
              },
            ],
      ),
    },
  })
  made
    .filter((entity) => entity.kind === 'stage')
    .forEach((stage, i) => {
      car.ids.set(`stage ${stages[i]?.key}`, stage.id)
    })
  for (const spec of stages) await sayOf(yard, car, spec, at)
}

const sayOf = (yard: Yard, car: Car, spec: StageSpec, at: Scene['at']) =>
  car.press(yard, {
    at,
    who: car.spec.manager,
    name: 'stage.describe',
    input: {
      stage: car.stage(spec.key),
      group: spec.group,
      host: spec.host === null ? null : car.assembly(spec.host),
      fits: spec.fits.map(car.assembly),
      removes: spec.removes.map(car.assembly),
      needsFitted: spec.needsFitted.map(car.assembly),
      needsOff: spec.needsOff.map(car.assembly),
      needsBay: spec.needsBay,
      safety: spec.safety,
      caution: spec.caution,
      handoverTo: spec.handoverTo === null ? null : car.party(spec.handoverTo),
    },
  })

/** The car comes whole: what was listed is handed over as one. */
async function handOver(yard: Yard, car: Car, at: Scene['at']): Promise<void> {
  const { assemblies, owner, lead } = car.spec
  const [handover] = await car.press(yard, {
    at,
    who: owner,
    name: 'handover.prepare',
    input: {
      assemblies: assemblies.map(({ key }) => car.assembly(key)),
      to: car.party(lead),
      condition: 'Complete and on its wheels. Known faults are in the owner’s letter.',
      care: 'Keys on the hook by the door; it rolls, the handbrake does not hold.',
      pieces: 1,
    },
  })
  if (handover === undefined) return
  car.ids.set('arrival', handover.id)
  const input = { handover: handover.id }
  await car.press(yard, { at, who: owner, name: 'handover.release', input })
}

const receive = (yard: Yard, car: Car, at: Scene['at']) =>
  car.press(yard, {
    at,
    who: car.spec.manager,
    name: 'handover.receive',
    input: { handover: known(car.ids, 'arrival'), outcome: 'accepted', pieces: 1 },
  })

/** What everything is fitted to is written down. */
async function asItCame(yard: Yard, car: Car, at: Scene['at']): Promise<void> {
  for (const { key, host } of car.spec.assemblies) {
    if (host === undefined) continue
    await car.press(yard, {
      at,
      who: car.spec.manager,
      name: 'assembly.fit',
      input: {
        assembly: car.assembly(key),
        host: car.assembly(host),
        reason: 'Fitted as the car came.',
      },
    })
  }
}

/** The hold and witness points of a stage as they stand. */
export const pointsNow = (yard: Yard, car: Car, key: string) =>
  all(car.record(yard).holds).filter(({ stage }) => stage === car.stage(key))
