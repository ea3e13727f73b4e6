import { describe, expect, it } from 'vitest'
import { refusedFor, shownBy, worked } from '../../test/worked-sum.ts'
import { torqueAdapter } from './torque-adapter.ts'
import { torqueAngle } from './torque-angle.ts'
import { torqueUnits } from './torque-units.ts'

const bolt = { bolt: 'ordinary', figureFor: 'dry', thread: 'dry', safety: 'no' }
const wrench = { torque: 80, unit: 'N·m', length: 400, adapter: 50, angle: 0, ...bolt }

describe('a torque wrench with an adapter', () => {
  // Published examples (read): 80 N·m, 40 cm + 5 cm → 71.1; 100 lbf·ft, 12 + 9 in → 57.14.
  it.each([
    [wrench, '71.1', '52.4'],
    [{ ...wrench, angle: 90 }, '80.0', '59.0'],
    [{ ...wrench, angle: 180 }, '91.4', '67.4'],
    [{ ...wrench, torque: 100, unit: 'lbf·ft', length: 304.8, adapter: 228.6 }, '57.1', '77.5'],
  ])('%o', (input, setting, other) => {
    expect(shownBy(torqueAdapter, input)).toEqual({ setting, other })
  })

  it('is refused folded back to the grip, and on a bolt that is tightened by angle', () => {
    expect(refusedFor(torqueAdapter, { ...wrench, adapter: 400, angle: 180 })).toEqual(['adapter'])
    expect(refusedFor(torqueAdapter, { ...wrench, bolt: 'tightened by angle' })).toEqual(['bolt'])
  })

  it('gives way to a socket on head, main and rod bolts', () => {
    const head = worked(torqueAdapter, { ...wrench, bolt: 'head, main or rod' })
    expect(head.warnings).toEqual([expect.stringContaining('use a socket')])
  })
})

describe('a bolt', () => {
  it('that stretched once is not used again unless its maker allows it', () => {
    expect(refusedFor(torqueAdapter, { ...wrench, bolt: 're-used stretch bolt' })).toEqual(['bolt'])
    const allowed = { ...wrench, bolt: 're-used stretch bolt, its maker allows it' }
    expect(refusedFor(torqueAdapter, allowed)).toEqual([])
  })

  it('takes no dry figure on an oiled thread, and how it was is in the working', () => {
    expect(refusedFor(torqueAdapter, { ...wrench, thread: 'oiled' })).toEqual(['thread'])
    expect(refusedFor(torqueAdapter, { ...wrench, thread: '' })).toEqual(['thread'])
    expect(worked(torqueAdapter, wrench).working.at(-1)).toBe('Thread dry.')
  })

  it('that safety hangs on wants the day on which the wrench was calibrated', () => {
    const safety = { ...wrench, safety: 'yes' }
    expect(refusedFor(torqueAdapter, safety)).toEqual(['calibrated'])
    expect(refusedFor(torqueAdapter, { ...safety, calibrated: '2026-02-30' })).toEqual([
      'calibrated',
    ])
    const said = worked(torqueAdapter, { ...safety, calibrated: '2026-03-31' }).working.at(-1)
    expect(said).toContain('2026-03-31, in date for 12 months or 5000 cycles')
  })
})

describe('a torque in another unit', () => {
  // NIST SP 811 appendix B (from memory).
  it.each([
    [65, 'lbf·ft', 'N·m', '88.13'],
    [110, 'N·m', 'lbf·ft', '81.13'],
    [120, 'lbf·in', 'lbf·ft', '10.00'],
  ])('%s %s in %s', (torque, from, to, shown) => {
    expect(shownBy(torqueUnits, { torque, from, to })).toEqual({ torque: shown })
  })
})

describe('tightening by angle', () => {
  // Geometry.
  it('moves the nut 0.375 mm in 90° at a pitch of 1.5 mm', () => {
    const input = { pitch: 1.5, angle: 90, ...bolt, bolt: 'tightened by angle' }
    expect(shownBy(torqueAngle, input)).toEqual({ travel: '0.375', flats: '1.50' })
    expect(refusedFor(torqueAngle, { ...input, bolt: 're-used stretch bolt' })).toEqual(['bolt'])
    expect(refusedFor(torqueAngle, { ...input, pitch: 0 })).toEqual(['pitch'])
  })
})
