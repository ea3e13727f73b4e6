import { describe, expect, it } from 'vitest'
import { startConditions } from '../lib/gate/start.ts'
import { newKey } from '../lib/live/new-key.ts'
import type { CommandName } from '../lib/record/command-names.ts'
import type { Json } from '../lib/record/condition.ts'
import type { ProjectRecord } from '../lib/record/project-record.ts'
import { Instant } from '../lib/record/scalars.ts'
import { all } from '../lib/record/table.ts'
import { civilDateIn, wallTime } from '../lib/record/zoned-time.ts'
import { plus, ZONE } from './calendar.ts'
import { loadDemonstration } from './load.ts'
import { type MemoryStage, memoryStage } from './play.ts'
import type { Played } from './seam.ts'

const WEDNESDAY = Instant.parse('2026-11-25T09:30:00.000Z')

async function loaded(now: Instant) {
  const stage = memoryStage(now)
  const played: Played[] = []
  await loadDemonstration({
    ...stage,
    play(press) {
      played.push(press)
      return stage.play(press)
    },
  })
  return { stage, played }
}

function projectNamed(stage: MemoryStage, name: string): ProjectRecord {
  const found = [...stage.projects.values()].find((record) =>
    all(record.projects).some((project) => project.name === name),
  )
  if (found === undefined) throw new Error(`${name} was not loaded`)
  return found
}

const averleyOf = (stage: MemoryStage) => projectNamed(stage, 'Averley Three-Litre')

function named<T extends { readonly name: string }>(rows: readonly T[], name: string): T {
  const found = rows.find((row) => row.name === name)
  if (found === undefined) throw new Error(`there is no ${name}`)
  return found
}

const stageNamed = (record: ProjectRecord, name: string) => named(all(record.stages), name)

/** What keeps a stage from starting then: rule and what it is about. */
const refusedFor = (record: ProjectRecord, name: string, at: Instant) =>
  startConditions(record, stageNamed(record, name), at).map(({ rule, entity }) => {
    const about = record.stages.rows.get(entity) ?? record.assemblies.rows.get(entity)
    return `${rule}: ${about?.name ?? entity}`
  })

/** Presses as that person, after everything that was loaded. */
async function press(
  stage: MemoryStage,
  who: string,
  name: CommandName,
  input: Json,
  minutes: number,
) {
  const person = stage.people.get(who)
  if (person === undefined) throw new Error(`${who} isn’t here`)
  const at = plus(stage.now, minutes)
  const record = averleyOf(stage).id
  return stage.play({ person, name, input, record, at, key: newKey(Date.parse(at)) })
}

describe('the demonstration', () => {
  it.each([
    ['on a Wednesday morning', '2026-11-25T09:30:00.000Z'],
    ['on a Monday before the shops open', '2026-11-30T05:10:00.000Z'],
    ['on a Sunday night', '2026-11-29T23:40:00.000Z'],
    ['on a Saturday', '2027-02-27T12:00:00.000Z'],
    ['on a Friday evening in summer', '2027-07-09T19:00:00.000Z'],
    ['a day after the clocks went forward', '2027-03-29T08:00:00.000Z'],
    ['on a Tuesday just after the clocks went back', '2027-11-02T07:00:00.000Z'],
    ['on New Year’s Day', '2027-01-01T10:00:00.000Z'],
  ])('is played without a refusal %s', async (_when, text) => {
    const { stage, played } = await loaded(Instant.parse(text))
    expect(stage.projects.size).toBe(3)
    expect(played.length).toBeGreaterThan(700)
    expect(played.every((press) => press.at <= stage.now)).toBe(true)
    expect(refusedFor(averleyOf(stage), 'Engine and gearbox into the bay', stage.now)).toHaveLength(
      3,
    )
    expect(refusedFor(averleyOf(stage), 'Headlining in the empty shell', stage.now)).toHaveLength(2)
  })

  it('plays in the order in which it happened, in working hours and on no weekend', async () => {
    const { played } = await loaded(WEDNESDAY)
    const times = played.map(({ at }) => at)
    expect(times.toSorted()).toEqual(times)
    for (const at of times) {
      const clock = wallTime(at, ZONE).slice(11)
      const weekday = new Date(`${civilDateIn(at, ZONE)}T00:00:00.000Z`).getUTCDay()
      expect([0, 6], at).not.toContain(weekday)
      expect(clock >= '08:00' && clock <= '17:30', clock).toBe(true)
    }
  })

  it('refuses the engine its bay for what the engine shop still owes, and for that only', async () => {
    const { stage } = await loaded(WEDNESDAY)
    expect(refusedFor(averleyOf(stage), 'Engine and gearbox into the bay', WEDNESDAY)).toEqual([
      'predecessor: Engine ready to fit',
      'custody: Engine',
      'exclusive-use: Engine',
    ])
  })

  it('lets the engine in once its last readings are in, it is released and received', async () => {
    const { stage } = await loaded(WEDNESDAY)
    const ready = stageNamed(averleyOf(stage), 'Engine ready to fit').id
    const missing = all(averleyOf(stage).checks).filter(
      (check) => check.stage === ready && check.state === 'missing',
    )
    expect(missing.map(({ type, name }) => [type, name])).toEqual([
      ['reading', 'oil pressure hot, 3,000 rev/min'],
      ['reading', 'compression spread, warm'],
    ])
    for (const [i, value] of [3.9, 4].entries()) {
      const check = missing[i]?.id ?? ''
      await press(stage, 'Wyn Pardoe', 'check.record', { check, value }, 1)
    }
    const end = { endedAt: plus(WEDNESDAY, 2) }
    await press(stage, 'Jory Wenlock', 'stage.signOff', { stage: ready, end }, 3)
    const handover = all(averleyOf(stage).handovers).find(({ state }) => state === 'prepared')?.id
    const input = { handover: handover ?? '' }
    await press(stage, 'Jory Wenlock', 'handover.release', { ...input, care: 'By the eyes.' }, 4)
    await press(stage, 'Mara Ellwood', 'handover.receive', { ...input, outcome: 'accepted' }, 5)
    const engineIn = stageNamed(averleyOf(stage), 'Engine and gearbox into the bay').id
    await press(stage, 'Tobin Ashby', 'stage.start', { stage: engineIn }, 6)
    expect(stageNamed(averleyOf(stage), 'Engine and gearbox into the bay').state).toBe('in work')
  })

  it('offers the trimmer the shell: only its slot and the shell itself are to come', async () => {
    const { stage } = await loaded(WEDNESDAY)
    const record = averleyOf(stage)
    const headlining = stageNamed(record, 'Headlining in the empty shell')
    expect(refusedFor(record, headlining.name, WEDNESDAY)).toEqual([
      'custody: Shell',
      'slot: Headlining in the empty shell',
    ])
    const shell = named(all(record.assemblies), 'Shell').id
    const window = all(record.openWindows)[0]
    const book = [...stage.books.values()].find(({ shops }) =>
      all(shops).some(({ name }) => name === 'Thistle & Welt'),
    )
    const bay = book === undefined ? undefined : all(book.bays)[0]
    const made = await press(
      stage,
      'Sorrel Penn',
      'slot.claim',
      {
        assembly: shell,
        bay: bay?.id ?? '',
        shop: book?.id ?? '',
        stage: headlining.id,
        from: window?.from ?? '',
        to: window?.to ?? '',
      },
      1,
    )
    expect(made[0]).toMatchObject({ kind: 'slot', state: 'agreed', window: window?.id })
  })

  it('waits for the owner’s yes to change order 7, which brings a stage', async () => {
    const { stage } = await loaded(WEDNESDAY)
    const record = averleyOf(stage)
    const orders = all(record.changeOrders)
    expect(orders.map(({ state }) => state)).toEqual([
      ...Array.from({ length: 6 }, () => 'approved'),
      'sent',
      'declined',
      'draft',
    ])
    const held = startConditions(
      record,
      stageNamed(record, 'Carburettors re-bushed and flow-matched'),
      WEDNESDAY,
    )
    expect(held).toMatchObject([{ rule: 'change-order', number: 7, is: 'sent' }])
  })

  it('keeps all four promises for the windscreen, a receipt with remarks, a refused one, a doubt, a concession', async () => {
    const { stage } = await loaded(WEDNESDAY)
    const record = averleyOf(stage)
    const screen = named(all(record.parts), 'Windscreen, made to pattern')
    const dates = all(record.promises).flatMap(({ part, date }) => (part === screen.id ? date : []))
    expect(dates).toHaveLength(4)
    expect(dates.toSorted()).toEqual(dates)
    expect((dates.at(-1) ?? '') > WEDNESDAY.slice(0, 10)).toBe(true)
    const outcomes = all(record.handovers).map(({ outcome }) => outcome)
    expect(outcomes).toContain('accepted with remarks')
    expect(outcomes).toContain('refused')
    expect(all(record.stages).filter(({ state }) => state === 'in doubt')).toHaveLength(1)
    expect(all(record.concessions)).toHaveLength(1)
    expect(all(record.told).some(({ confirmedAt }) => confirmedAt === null)).toBe(true)
    expect(all(record.stages).some(({ reported }) => reported !== null)).toBe(true)
    expect(all(record.decisions).map(({ state }) => state)).toEqual(['asked'])
    expect(all(record.asks)).toHaveLength(1)
  })

  it('lets the frame of the second car cure by the clock while its steel stands bare', async () => {
    const { stage } = await loaded(WEDNESDAY)
    const dunmore = projectNamed(stage, 'Dunmore Saloon')
    const rules = (name: string) =>
      refusedFor(dunmore, name, WEDNESDAY).map((text) => text.split(':')[0])
    expect(rules('Skins back on the frame')).toContain('least-lag')
    expect(rules('Epoxy hold coat on chassis and skins')).toEqual(['slot', 'air', 'precautions'])
  })

  it('tells how far it is', async () => {
    const { stage } = await loaded(WEDNESDAY)
    expect(stage.messages.at(-1)).toBe('All is played')
    expect(stage.messages.length).toBeGreaterThan(10)
  })
})
