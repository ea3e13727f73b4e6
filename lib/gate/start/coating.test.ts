import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  aLink,
  anAssembly,
  aRecord,
  aStage,
  at,
  lead,
  shellId,
  theParties,
} from '../../../test/builders.ts'
import { aCoat, aFilm } from '../../../test/coating-builders.ts'
import { overWhat } from '../../coating/over-what.ts'
import type { Coat, CoatKind, Film } from '../../record/entities/coating.ts'
import type { Link, Stage } from '../../record/entities/work.ts'
import { startConditions } from '../start.ts'

const shell = anAssembly({ id: shellId, custodian: lead })

/** A stage of the lead's on the shell that lays that. */
const laying = (lays: CoatKind, over: Partial<Stage> = {}): Stage =>
  aStage({ party: lead, assemblies: [shellId], lays, ...over })

const judged = (stage: Stage, when: number, ...on: readonly (Coat | Film | Link | Stage)[]) =>
  startConditions(aRecord(theParties(), shell, stage, on), stage, at(when))

const stack = (...products: CoatKind[]): Coat[] =>
  products.map((product, i) => aCoat({ product, endedAt: at(i) }))

describe('what may go over what', () => {
  it.each([
    ['B3', 'filler', 'etch primer', 'not over it', 'coat.strip'],
    ['B3', 'sprayed polyester', 'etch primer', 'not over it', 'coat.strip'],
    ['B4', 'epoxy', 'etch primer', 'not over it', 'coat.strip'],
    ['B4', 'epoxy', 'rust converter', 'not over it', 'coat.strip'],
    ['B5', 'filler', 'epoxy', 'window or keyed', 'stage.add'],
    ['B6', 'high build', 'epoxy', 'window or keyed', 'stage.add'],
    ['B8', 'colour', 'high build', 'isolator first', 'coat.record'],
    ['B8', 'colour', 'filler', 'isolator first', 'coat.record'],
  ] as const)('%s: %s over %s is refused: %s', (fact, lays, over, why, command) => {
    expect(judged(laying(lays), 2, ...stack(over))).toMatchObject([
      {
        rule: 'coat-over',
        fact,
        why,
        lays,
        over,
        concedable: true,
        clearedBy: [lead],
        clearedWith: { command },
      },
    ])
  })

  it.each([
    ['epoxy', 'epoxy'],
    ['filler', 'filler'],
    ['high build', 'filler'],
    ['isolator', 'high build'],
    ['colour', 'isolator'],
    ['colour', 'colour'],
    ['lacquer', 'lacquer'],
    ['etch primer', 'etch primer'],
  ] as const)('%s goes over %s', (lays, over) => {
    expect(judged(laying(lays), 2, ...stack(over))).toEqual([])
  })

  it('asks for a pressable way out of every row of the table', () => {
    for (const { lay, over } of overWhat)
      for (const lays of lay)
        for (const product of over) {
          const on =
            product === 'bare metal'
              ? [aCoat({ offAt: at(1) })]
              : [aCoat({ product, endedAt: at(0) })]
          const found = judged(laying(lays), 100, ...on)
          expect([lays, product, found.length]).toEqual([lays, product, 1])
          expect(found[0]?.clearedWith).not.toBeNull()
        }
  })

  it('judges nothing where nothing was ever recorded: a blank is missing', () => {
    expect(judged(laying('lacquer'), 2)).toEqual([])
  })

  it('judges what lies on top, not what lies deeper or was taken off', () => {
    const off = aCoat({ product: 'etch primer', endedAt: at(5), offAt: at(6) })
    expect(judged(laying('colour'), 8, ...stack('etch primer', 'epoxy', 'isolator'), off)).toEqual(
      [],
    )
  })
})

describe('windows of what lies there', () => {
  it('B5: filler goes over epoxy inside the window that its stage’s link carries', () => {
    const epoxy = laying('epoxy', { state: 'signed off', endedAt: at(0) })
    const other = laying('seam sealer')
    const window = aLink({ from: epoxy.id, to: other.id, greatestLagHours: 72 })
    const on = [epoxy, other, window, aCoat({ stage: epoxy.id, endedAt: at(0) })]
    expect(judged(laying('filler'), 72, ...on)).toEqual([])
    expect(judged(laying('filler'), 73, ...on)).toMatchObject([
      {
        fact: 'B5',
        ranOutAt: at(72),
        clearedWith: { command: 'stage.insertKeying', input: { link: window.id } },
      },
    ])
  })

  it('B5: filler goes over epoxy that was keyed since', () => {
    const keyed = (endedAt: number) =>
      aStage({
        party: lead,
        assemblies: [shellId],
        keys: true,
        state: 'signed off',
        endedAt: at(endedAt),
      })
    const epoxy = aCoat({ endedAt: at(5) })
    expect(judged(laying('filler'), 300, epoxy, keyed(200))).toEqual([])
    expect(judged(laying('filler'), 300, epoxy, keyed(4))).toHaveLength(1)
  })

  it('B7: lacquer waits for the colour to flash, and is on within the day', () => {
    const colour = aCoat({ product: 'colour', endedAt: at(0) })
    expect(judged(laying('lacquer'), 0.4, colour)).toMatchObject([
      { fact: 'B7', opensAt: at(0.5), clearedWith: null },
    ])
    expect(judged(laying('lacquer'), 24, colour)).toEqual([])
    expect(judged(laying('lacquer'), 24.1, colour)).toMatchObject([
      { fact: 'B7', ranOutAt: at(24), clearedWith: { command: 'stage.add' } },
    ])
  })

  it('B7: past its window the colour is keyed and has a fresh coat; keying alone isn’t enough', () => {
    const colour = aCoat({ product: 'colour', endedAt: at(0) })
    const keyed = aStage({
      party: lead,
      assemblies: [shellId],
      keys: true,
      state: 'ended',
      endedAt: at(30),
    })
    expect(judged(laying('lacquer'), 32, colour, keyed)).toMatchObject([
      {
        fact: 'B7',
        clearedWith: { command: 'coat.record', input: { assembly: shellId, product: 'colour' } },
      },
    ])
    const fresh = aCoat({ product: 'colour', endedAt: at(31) })
    expect(judged(laying('lacquer'), 32, colour, keyed, fresh)).toEqual([])
  })

  it('B6: both ends of a link count from the last coat, never from the end of masking off or a signature', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 40 }),
        fc.integer({ min: 0, max: 40 }),
        fc.integer({ min: 0, max: 40 }),
        fc.integer({ min: 0, max: 12 }),
        fc.integer({ min: 0, max: 48 }),
        fc.integer({ min: 0, max: 150 }),
        (coatEnd, masking, signing, least, span, waits) => {
          const endedAt = coatEnd + masking
          const when = endedAt + waits
          const colour = laying('seam sealer', {
            state: 'signed off',
            endedAt: at(endedAt),
            signedOffAt: at(endedAt + signing),
          })
          const next = laying('wax')
          const link = aLink({
            from: colour.id,
            to: next.id,
            leastLagHours: least,
            greatestLagHours: least + span,
          })
          const first = aCoat({ product: 'seam sealer', stage: colour.id, endedAt: at(0) })
          const last = aCoat({ product: 'seam sealer', stage: colour.id, endedAt: at(coatEnd) })
          const rules = judged(next, when, colour, link, first, last).map(({ rule }) => rule)
          expect(rules.includes('least-lag')).toBe(when < coatEnd + least)
          expect(rules.includes('greatest-lag')).toBe(when > coatEnd + least + span)
        },
      ),
    )
  })
})

describe('bare metal and places sanded through', () => {
  const stripped = aCoat({ endedAt: at(0), offAt: at(10) })

  it('B1: steel laid bare is coated in the same shift, else it is abraded anew', () => {
    expect(judged(laying('epoxy'), 18, stripped)).toEqual([])
    expect(judged(laying('epoxy'), 18.5, stripped)).toMatchObject([
      { rule: 'bare-metal', ranOutAt: at(18), clearedWith: { command: 'stage.add' } },
    ])
    const keyed = aStage({
      party: lead,
      assemblies: [shellId],
      keys: true,
      state: 'ended',
      endedAt: at(20),
    })
    expect(judged(laying('epoxy'), 27, stripped, keyed)).toEqual([])
  })

  it('B8: colour never goes on bare metal', () => {
    expect(judged(laying('colour'), 11, stripped)).toMatchObject([
      { rule: 'coat-over', fact: 'B8', over: 'bare metal', why: 'primer first' },
    ])
  })

  const through = aCoat({
    product: 'isolator',
    endedAt: at(3),
    sandedAt: at(6),
    sandedTo: 'bare metal',
    sandedPlace: 'swage, left',
  })
  it('B8: a place sanded through to metal has its own primer before anything else', () => {
    expect(judged(laying('colour'), 8, through)).toMatchObject([
      { rule: 'sanded-through', to: 'bare metal', place: 'swage, left' },
    ])
    expect(judged(laying('epoxy'), 8, through)).toEqual([])
    const spot = aCoat({ product: 'epoxy', endedAt: at(7) })
    const isolator = aCoat({ product: 'isolator', endedAt: at(8) })
    expect(judged(laying('colour'), 9, through, spot, isolator)).toEqual([])
  })
})

describe('flatting and polishing', () => {
  const flat = (flats: number) => aStage({ party: lead, assemblies: [shellId], flats })
  const lacquer = [
    aCoat({ product: 'colour', endedAt: at(0) }),
    aCoat({ product: 'lacquer', endedAt: at(2) }),
  ]
  const film = (hours: number, microns: number, over: Partial<Film> = {}) =>
    aFilm({ at: at(hours), microns, ...over })

  it('B9: lacquer cures 48 h from its last coat before it is flatted wet', () => {
    const read = [film(1, 100), film(3, 165)]
    expect(judged(flat(20), 49, ...lacquer, ...read)).toMatchObject([
      { rule: 'lacquer-cure', until: at(50), clearedBy: [], clearedWith: null },
    ])
    expect(judged(flat(20), 50, ...lacquer, ...read)).toEqual([])
  })

  it('B11: about 40 µm of lacquer stay, at the thinnest point that was read', () => {
    const roof = [film(1, 100), film(3, 165)]
    const edge = { point: '2' }
    const thin = [film(1, 110, edge), film(3, 169.9, edge)]
    expect(judged(flat(20), 60, ...lacquer, ...roof, ...thin)).toMatchObject([
      { rule: 'film-left', where: 'Roof, 2', clearedWith: { command: 'coat.record' } },
    ])
    expect(judged(flat(19), 60, ...lacquer, ...roof, ...thin)).toEqual([])
  })

  it('B11: without a reading before and after the lacquer nobody knows, and it says so', () => {
    expect(judged(flat(5), 60, ...lacquer, film(3, 500))).toMatchObject([
      { rule: 'film-left', left: null, clearedWith: { command: 'film.record' } },
    ])
  })

  it('B13: a gauge that wasn’t set to nought that day proves nothing', () => {
    const doubtful = [film(1, 100, { zeroed: false }), film(3, 200)]
    expect(judged(flat(5), 60, ...lacquer, ...doubtful)).toMatchObject([{ left: null }])
  })

  it('judges an assembly without lacquer not at all', () => {
    expect(judged(flat(5), 60, ...stack('epoxy'))).toEqual([])
  })
})
