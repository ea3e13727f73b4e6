import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { aContext, anActor, anId, aParty, aRecord, lead, owner } from '../../../test/builders.ts'
import type { Party } from '../../record/entities/people.ts'
import { type ProjectRecord, projectAfter } from '../../record/project-record.ts'
import { folded } from '../../record/same-name.ts'
import { all, must } from '../../record/table.ts'
import { type BuildOrderImport, buildOrderImport } from '../build-order-import.ts'
import { beginsWithFigure } from '../check-limits.ts'
import { decodeText } from './decode-text.ts'
import { readBuildOrder } from './read-build-order.ts'
import type { NamedPerson } from './who.ts'
import { writeBuildOrder } from './write-build-order.ts'

const odd = [
  'Wet|dry',
  '12',
  ' 12',
  'Coat +24h',
  'Coat <72h',
  '+24h',
  '=SUM(A1:A9)',
  '-',
  '@home',
  'back\\slash',
  '\\',
  '\\ ',
  'C:\\parts',
  '"',
  '""',
  'a;b,c\td',
  'two\r\nlines',
  '3.1..4.5 bar',
  'bank 2',
  'bank  2',
  '..',
  'hold: owner',
  'owner',
  'lead',
  'Ines Halloran',
  'reading',
  'photo each side',
  '\u00A0edge\u00A0',
  '\uFEFFmark',
  'é',
  'e\u0301',
  'sep=;',
  'stage',
  'µm/°C',
  '#',
  "'",
  '1,5',
  '1/min',
  '`😀',
] as const
const name = fc
  .oneof(
    fc.constantFrom(...odd),
    fc.string({
      unit: fc.constantFrom(...'ab12 \t\n\r|+<>\\"\'.,;:=-@hHéß'),
      minLength: 1,
      maxLength: 12,
    }),
    fc.string({ unit: 'binary', minLength: 1, maxLength: 8 }),
  )
  .filter((text) => /\S/.test(text))
const hours = fc.double({ min: 0, max: 100_000, noNaN: true }).map((value) => value + 0)
const figure = fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => value + 0)
const maybe = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: null })
const some = (upTo: number) => fc.nat({ max: upTo - 1 })

const check = fc.oneof(
  fc.record({
    type: fc.constantFrom('photo', 'tick', 'document'),
    name,
    unit: fc.constant(null),
    limits: fc.constant([null, null] as const),
  }),
  fc.record({
    type: fc.constant('reading' as const),
    name,
    unit: maybe(name.filter((unit) => !beginsWithFigure(unit))),
    limits: fc.tuple(maybe(figure), maybe(figure)),
  }),
)
const stage = fc.record({
  name,
  party: some(5),
  assemblies: fc.uniqueArray(some(4), { maxLength: 3 }),
  hours: fc.tuple(maybe(hours), maybe(hours), maybe(hours)),
  after: fc.uniqueArray(fc.record({ back: some(6), least: hours, more: maybe(hours) }), {
    maxLength: 3,
    selector: (link) => link.back,
  }),
  checks: fc.uniqueArray(check, { maxLength: 4, selector: (c) => `${c.type} ${c.name}` }),
  holds: fc.uniqueArray(fc.record({ point: fc.constantFrom('hold', 'witness'), who: some(8) }), {
    maxLength: 3,
    selector: (hold) => `${hold.point} ${hold.who}`,
  }),
})
const world = fc.record({
  // A party's name is its own, but a person may be called as a party is.
  shops: fc.uniqueArray(
    name.filter((shop) => shop !== 'Ines Halloran'),
    { minLength: 3, maxLength: 3, selector: folded },
  ),
  people: fc.uniqueArray(name, { minLength: 3, maxLength: 3, selector: folded }),
  assemblies: fc.uniqueArray(name, { minLength: 4, maxLength: 4, selector: folded }),
  stages: fc.array(stage, { minLength: 1, maxLength: 7 }),
})
type World = Readonly<typeof world extends fc.Arbitrary<infer W> ? W : never>

const inOrder = (values: readonly (number | null)[]): (number | null)[] => {
  const given = values.filter((value) => value !== null).sort((a, b) => a - b)
  return values.map((value) => (value === null ? null : (given.shift() ?? null)))
}

/** The lead, the owner and three shops, all of whose people are participants so that a hold may name them. */
function parties(made: World) {
  const shops = made.shops.map((shop, i) => aParty({ id: anId('pty', `shop${i}`), name: shop }))
  const named: NamedPerson[] = made.people.map((person, i) => ({
    person: anId('psn', `person${i}`),
    party: shops[i]?.id ?? owner,
    name: person,
  }))
  const participants = named.map(({ person, party }, i) => ({
    kind: 'participant' as const,
    id: anId('ptc', `one${i}`),
    project: anId('prj', 'averley'),
    party,
    person,
    since: aContext(anActor(lead)).now,
    removedAt: null,
  }))
  return { shops, named, record: aRecord(shops, participants) }
}

function inputOf(
  made: World,
  shops: readonly Party[],
  people: readonly NamedPerson[],
): BuildOrderImport {
  const who = [lead, owner, ...shops.map((shop) => shop.id)]
  return {
    parties: [],
    assemblies: made.assemblies.map((assembly, i) => ({
      key: `assembly${i}`,
      name: assembly,
      custodian: lead,
    })),
    stages: made.stages.map((one, i) => {
      const [hoursLeast = null, hoursLikely = null, hoursMost = null] = inOrder(one.hours)
      return {
        key: `line${i}`,
        name: one.name,
        party: who[one.party] ?? lead,
        assemblies: one.assemblies.map((a) => `assembly${a}`),
        hoursLeast,
        hoursLikely,
        hoursMost,
      }
    }),
    links: made.stages.flatMap((one, i) =>
      one.after
        .filter((link) => link.back < i)
        .map((link) => ({
          from: `line${link.back}`,
          to: `line${i}`,
          leastLagHours: link.more === null ? link.least : Math.min(link.least, link.more),
          greatestLagHours: link.more === null ? null : Math.max(link.least, link.more),
        })),
    ),
    checks: made.stages.flatMap((one, i) =>
      one.checks.map((c) => {
        const [least = null, greatest = null] = inOrder(c.limits)
        return { stage: `line${i}`, type: c.type, name: c.name, unit: c.unit, least, greatest }
      }),
    ),
    holds: made.stages.flatMap((one, i) =>
      one.holds.map((hold) => {
        const person = people[hold.who - 5]
        return {
          stage: `line${i}`,
          point: hold.point,
          name: one.name,
          party: person?.party ?? who[hold.who] ?? lead,
          person: person?.person ?? null,
        }
      }),
    ),
  }
}

function withImport(record: ProjectRecord, input: unknown): ProjectRecord {
  const actor = anActor(lead)
  const applied = buildOrderImport.apply(input, actor, record, aContext(actor))
  if (applied.outcome !== 'changes') throw new Error(JSON.stringify(applied))
  return projectAfter(record, { version: record.version + 1, entities: applied.entities })
}

/** A build order in all that the columns hold, by names and by the order of stages. */
function buildOrder(record: ProjectRecord) {
  const stages = all(record.stages).sort((a, b) => a.number - b.number)
  const position = (id: string) => stages.findIndex((one) => one.id === id)
  return stages.map((one) => ({
    name: one.name,
    party: must(record.parties, one.party).name,
    assemblies: one.assemblies.map((id) => must(record.assemblies, id).name),
    hours: [one.hoursLeast, one.hoursLikely, one.hoursMost],
    after: all(record.links)
      .filter((link) => link.to === one.id)
      .map((link) => [position(link.from), link.leastLagHours, link.greatestLagHours]),
    checks: all(record.checks)
      .filter((c) => c.stage === one.id)
      .map((c) => [c.type, c.name, c.unit, c.least, c.greatest]),
    holds: all(record.holds)
      .filter((hold) => hold.stage === one.id)
      .map((hold) => [hold.point, hold.party, hold.person]),
  }))
}

describe('export and import', () => {
  it('gives the same build order in all that the columns hold, however odd the names', () => {
    fc.assert(
      fc.property(world, (made) => {
        const { shops, named, record } = parties(made)
        const first = withImport(record, inputOf(made, shops, named))
        const file = new TextEncoder().encode(writeBuildOrder(first, named))
        const preview = readBuildOrder(decodeText(file), { record, people: named })
        expect(preview.faults).toEqual([])
        expect(buildOrder(withImport(record, preview.input))).toEqual(buildOrder(first))
      }),
      { numRuns: 600 },
    )
    // 600 files take some seconds on a machine that does other work besides.
  }, 60_000)
})
