import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  aChangeLine,
  aChangeOrder,
  anEstimateLine,
  aParty,
  aRecord,
  engineShop,
  lead,
} from '../../test/builders.ts'
import type { ChangeOrder } from '../record/entities/money.ts'
import { Minor } from '../record/scalars.ts'
import {
  agreedPrice,
  firstEstimate,
  percentOver,
  projectAgreedPrice,
  projectFirstEstimate,
} from './totals.ts'

// Source: worked example, invented figures: a base estimate of ten lines, eleven extras, a twelfth change of minus.
// Minor units; every line at 20 %.
const base = [
  3_400_00, 2_850_00, 7_680_00, 9_950_00, 4_800_00, 2_600_00, 6_500_00, 2_150_00, 1_870_00,
  5_400_00,
]
const extras = [
  { net: 3_712_00, running: 50_912_00, over: 786, gross: 61_094_40 },
  { net: 2_976_00, running: 53_888_00, over: 1417, gross: 64_665_60 },
  { net: 2_264_50, running: 56_152_50, over: 1897, gross: 67_383_00 },
  { net: 2_624_00, running: 58_776_50, over: 2453, gross: 70_531_80 },
  { net: 3_180_00, running: 61_956_50, over: 3126, gross: 74_347_80 },
  { net: 3_745_20, running: 65_701_70, over: 3920, gross: 78_842_04 },
  { net: 2_418_75, running: 68_120_45, over: 4432, gross: 81_744_54 },
  { net: 2_136_40, running: 70_256_85, over: 4885, gross: 84_308_22 },
  { net: 3_672_00, running: 73_928_85, over: 5663, gross: 88_714_62 },
  { net: 2_893_15, running: 76_822_00, over: 6276, gross: 92_186_40 },
  { net: 3_418_00, running: 80_240_00, over: 7000, gross: 96_288_00 },
]

const approved = (net: number, over: Partial<ChangeOrder> = {}) => {
  const order = aChangeOrder({ party: lead, state: 'approved', ...over })
  const line = aChangeLine({ changeOrder: order.id, party: order.party, net: Minor.parse(net) })
  return [order, line]
}
const estimate = base.map((net, index) =>
  anEstimateLine({ net: Minor.parse(net), position: index + 1 }),
)

describe('the worked example of eleven small extras (invented figures)', () => {
  it('begins at 47,200.00, which is 56,640.00 with tax', () => {
    const record = aRecord(estimate)
    expect(firstEstimate(record, lead)).toEqual({
      net: 47_200_00,
      tax: 9_440_00,
      gross: 56_640_00,
    })
    expect(agreedPrice(record, lead)).toEqual(firstEstimate(record, lead))
  })

  it.each(extras.map((extra, index) => ({ ...extra, count: index + 1 })))(
    'after $count of them stands at $running before tax and $gross with it, $over hundredths of a per cent over',
    ({ count, running, over, gross }) => {
      const changes = extras.slice(0, count).flatMap(({ net }) => approved(net))
      const record = aRecord(estimate, changes)
      const agreed = agreedPrice(record, lead)
      expect(agreed).toMatchObject({ net: running, gross })
      expect(percentOver(firstEstimate(record, lead).net, agreed.net)).toBe(over)
      expect(projectAgreedPrice(record, 'owner')).toEqual(agreed)
    },
  )

  it('comes down again by the twelfth, a minus of 1,250.00', () => {
    const changes = [...extras.map(({ net }) => net), -1_250_00].flatMap((net) => approved(net))
    const agreed = agreedPrice(aRecord(estimate, changes), lead)
    expect(agreed).toEqual({ net: 78_990_00, tax: 15_798_00, gross: 94_788_00 })
    expect(percentOver(Minor.parse(47_200_00), agreed.net)).toBe(67_35)
  })
})

describe('agreed price', () => {
  it('counts approved changes only, and those that the owner bears', () => {
    const record = aRecord(
      anEstimateLine({ net: Minor.parse(1_000_00) }),
      approved(10_00),
      approved(20_00, { state: 'sent' }),
      approved(40_00, { state: 'declined' }),
      approved(80_00, { bears: 'shop' }),
      approved(160_00, { bears: 'insurer' }),
      approved(320_00, { bears: 'disputed' }),
    )
    expect(agreedPrice(record, lead).net).toBe(1_010_00)
  })

  it('leaves out lines that were struck or withdrawn', () => {
    const order = aChangeOrder({ party: lead, state: 'approved' })
    const struck = aChangeLine({ changeOrder: order.id, party: lead, removedAt: order.raisedAt })
    const withdrawn = anEstimateLine({ withdrawnAt: order.raisedAt })
    expect(agreedPrice(aRecord(order, struck, withdrawn), lead).net).toBe(0)
  })

  it("keeps the prices of a shop behind the lead out of the owner's total", () => {
    const castings = aParty({ bills: 'lead' })
    const record = aRecord(
      castings,
      anEstimateLine({ net: Minor.parse(500_00) }),
      anEstimateLine({ party: engineShop, net: Minor.parse(300_00) }),
      anEstimateLine({ party: castings.id, net: Minor.parse(70_00) }),
      approved(7_00, { party: castings.id }),
    )
    expect(projectFirstEstimate(record, 'owner').net).toBe(800_00)
    expect(projectFirstEstimate(record, 'lead').net).toBe(70_00)
    expect(projectAgreedPrice(record, 'lead').net).toBe(77_00)
  })

  it('is the estimate and the approved changes to the penny, whatever they are', () => {
    const nets = fc.array(fc.integer({ min: -1_000_000_00, max: 1_000_000_00 }), { maxLength: 30 })
    fc.assert(
      fc.property(nets, nets, (first, changes) => {
        const lines = first.map((net) => anEstimateLine({ net: Minor.parse(net) }))
        const record = aRecord(
          lines,
          changes.flatMap((net) => approved(net)),
        )
        const expected = [...first, ...changes].reduce((sum, net) => sum + net, 0)
        expect(agreedPrice(record, lead).net).toBe(expected)
      }),
      { numRuns: 50 },
    )
  })
})

describe('per cent over the first estimate', () => {
  it('is unknown where there was no first estimate', () => {
    expect(percentOver(Minor.parse(0), Minor.parse(500))).toBeNull()
  })
  it('is minus where the bill came down, a half going away from zero', () => {
    expect(percentOver(Minor.parse(20_000), Minor.parse(19_999))).toBe(-1)
    expect(percentOver(Minor.parse(20_000), Minor.parse(20_001))).toBe(1)
  })
})
