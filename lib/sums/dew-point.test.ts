import * as psychrolib from 'psychrolib'
import { expect, test } from 'vitest'
import { dewMargin, dewPoint } from './dew-margin.ts'

test('the dew point is that of a published table, to a tenth', () => {
  // One-decimal table of a coating inspector's guide (read): air in °C, humidity in %, dew point in °C.
  const table = [
    [10, 60, 2.6],
    [15, 85, 12.5],
    [18, 60, 10.2],
    [20, 60, 12.0],
    [25, 60, 16.7],
    [30, 60, 21.4],
  ] as const
  for (const [air, humidity, dew] of table)
    expect(Math.abs(dewPoint(air, humidity) - dew)).toBeLessThanOrEqual(0.1)
})

test('it is within 0.05 °C of the ASHRAE formulation over what a paint shop meets', () => {
  psychrolib.SetUnitSystem(psychrolib.SI)
  let compared = 0
  for (let air = 2; air <= 45; air += 1)
    for (let humidity = 10; humidity <= 100; humidity += 5) {
      const theirs = psychrolib.GetTDewPointFromRelHum(air, humidity / 100)
      if (theirs < 0) continue
      compared += 1
      expect(Math.abs(dewPoint(air, humidity) - theirs), `${air} °C, ${humidity} %`).toBeLessThan(
        0.05,
      )
    }
  expect(compared).toBeGreaterThan(500)
})

test('the margin is decided on full precision, equal passes, and near the line it says so', () => {
  const dew = dewPoint(20, 60)
  expect(dewMargin(20, 60, dew + 3)).toMatchObject({ passes: true, onTheLine: true })
  expect(dewMargin(20, 60, dew + 2.9999)).toMatchObject({ passes: false, onTheLine: true })
  // 20 °C, 60 %, surface 15.0: this formula passes by 0.005 where ASHRAE's refuses by 0.007.
  expect(dewMargin(20, 60, 15)).toMatchObject({ passes: true, onTheLine: true })
  expect(dewMargin(20, 60, 17)).toMatchObject({ passes: true, onTheLine: false })
})
