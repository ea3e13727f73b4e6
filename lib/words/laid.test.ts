import { describe, expect, it } from 'vitest'
import {
  aLink,
  anEngine,
  anId,
  aPart,
  aRecord,
  aStage,
  at,
  lead,
  project,
} from '../../test/builders.ts'
import type { LaidStage } from '../plan/laid-out.ts'
import { layOut } from '../plan/lay-out.ts'
import type { PartPromise } from '../record/entities/things.ts'
import { CivilDate } from '../record/scalars.ts'
import {
  drawnWords,
  floatShort,
  floatWords,
  laidDays,
  runBegins,
  runNumbers,
  sketchedWords,
  waitsForWords,
} from './laid.ts'
import type { Place } from './reader.ts'

// Monday 2 March 2026, 08:00.
const place: Place = { locale: 'en-GB', timeZone: 'Europe/London', now: at(0) }
const strip = aStage({
  id: anId('stg', 'strip'),
  number: 1,
  state: 'signed off',
  startedAt: at(-96),
  endedAt: at(-70),
})
const epoxy = aStage({
  id: anId('stg', 'epoxy'),
  number: 2,
  state: 'in work',
  startedAt: at(-72),
  hoursLikely: 2,
})
const paint = aStage({ id: anId('stg', 'paint'), number: 3, hoursLikely: 18 })
const loom = aStage({ id: anId('stg', 'loom'), number: 4 })
const record = aRecord(
  anEngine({ custodian: lead }),
  [strip, epoxy, paint, loom],
  aLink({ from: epoxy.id, to: paint.id }),
)
const laid = layOut(record, [], at(0))
const of = (id: string): LaidStage => laid.stages.get(id) ?? expect.fail(id)

describe('a build order along the days, in words', () => {
  it('gives its days', () => {
    expect(laidDays(of(strip.id), place)).toBe('Thu 26 Feb to Fri 27 Feb')
    expect(laidDays(of(paint.id), place)).toBe('Mon 2 Mar to Tue 3 Mar')
    expect(laidDays(of(loom.id), place)).toBe('Mon 2 Mar')
    // Longer in work than its hours: nobody knows until when.
    expect(laidDays(of(epoxy.id), place)).toBe('since Fri 27 Feb')
  })

  it('says what a stage begins upon, and how far it may slip', () => {
    expect(waitsForWords(of(loom.id), record, place)).toBe('')
    expect(
      waitsForWords(
        { ...of(loom.id), waitsFor: { kind: 'stage', stage: epoxy.id } },
        record,
        place,
      ),
    ).toBe('It comes on the heels of 02.')
    expect(floatWords(of(paint.id))).toContain('critical run')
    expect(floatWords(of(loom.id))).toBe('It may slip a working day before the end moves.')
    expect(floatWords({ ...of(loom.id), floatDays: 0.4 })).toContain('less than a working day')
    expect(floatWords(of(strip.id))).toBe('')
    expect(floatShort({ ...of(loom.id), floatDays: 12.7 })).toBe('12 working days')
  })

  it('says what is only sketched', () => {
    expect(sketchedWords(of(loom.id), place)).toEqual([
      'No hours are given: it is drawn as one working day.',
    ])
    expect(sketchedWords(of(epoxy.id), place)).toEqual([
      'It is in work longer than its hours: it is drawn up to now.',
    ])
    expect(sketchedWords(of(strip.id), place)).toEqual([])
    expect(sketchedWords(of(paint.id), place)).toEqual([])
  })

  it('says what the critical run begins with, and what that waits for', () => {
    expect(runBegins(laid, record, place)).toBe('It begins with 02, which is in work.')
    const glass = aStage({ id: anId('stg', 'glass'), number: 5, hoursLikely: 4 })
    const windscreen = aPart({ name: 'Windscreen', stages: [glass.id], state: 'ordered' })
    const promise: PartPromise = {
      kind: 'promise',
      id: anId('prm', 'first'),
      project,
      part: windscreen.id,
      date: CivilDate.parse('2026-04-02'),
      by: lead,
      madeAt: at(-10),
      remark: '',
    }
    const late = aRecord(anEngine({ custodian: lead }), paint, glass, windscreen, promise)
    expect(runBegins(layOut(late, [], at(0)), late, place)).toBe(
      'It begins with 05, which waits for Windscreen, promised for Thu 2 Apr.',
    )
    expect(runBegins({ stages: new Map(), run: [], end: null }, record, place)).toBe('')
  })

  it('names the beginning and the end of a run that is too long to be read', () => {
    const long = Array.from({ length: 20 }, (_, n) =>
      aStage({ id: anId('stg', `long${n}`), number: n + 1 }),
    )
    const ids = long.map(({ id }) => id)
    expect(runNumbers(ids, aRecord(long))).toBe(
      '01 › 02 › 03 › 04 › 05 › 06 › 07 › 08 › … › 18 › 19 › 20 (20 stages)',
    )
    expect(runNumbers(ids.slice(0, 16), aRecord(long))).not.toContain('…')
  })

  it('says all of it in sentences that promise no day', () => {
    expect(runNumbers(laid.run, record)).toBe('02 › 03')
    expect(drawnWords(laid, [strip, epoxy, paint, loom], record, place)).toBe(
      '4 stages along the days in the lanes of 1 shop, from Thu 26 Feb to Tue 3 Mar: 1 over, 1 begun, 2 to come. As the build order stands, without odds, the last of it ends Tue 3 Mar; the critical run is 02 › 03.',
    )
  })
})
