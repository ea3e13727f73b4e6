import * as z from 'zod/mini'
import { choice, measure } from './fields.ts'
import { ask, defineSum, fault, figure, refuse, result } from './sum.ts'
import { convert } from './units.ts'

/** The margin of a surface over the dew point, in °C, widely stated with ISO 8502-4 and ISO 12944-7: only ever agreed upward. */
export const LEAST_MARGIN = 3
/** So near to the line two good formulas can disagree, in °C. */
const ON_THE_LINE = 0.1
/** The usual limit of data sheets, in % (given with ISO 12944-7 in secondary texts, read). */
const USUAL_HUMIDITY = 85

/**
 * Dew point in °C of air at `celsius` and `humidity` %: Magnus, g = ln(RH/100) + 17.62·T/(243.12+T), Td = 243.12·g/(17.62−g); coefficients
 * as in the WMO guide, annex 4.B (quoted in an instrument maker's handbook, read). Over water, so not for frost.
 */
export function dewPoint(celsius: number, humidity: number): number {
  const g = Math.log(humidity / 100) + (17.62 * celsius) / (243.12 + celsius)
  return (243.12 * g) / (17.62 - g)
}

/** How the margin of a surface over the dew point stands, decided on full precision; equal passes. All in °C. */
export function dewMargin(
  air: number,
  humidity: number,
  surface: number,
  least: number = LEAST_MARGIN,
): {
  readonly dew: number
  readonly margin: number
  readonly passes: boolean
  readonly onTheLine: boolean
} {
  const dew = dewPoint(air, humidity)
  const margin = surface - dew
  return { dew, margin, passes: margin >= least, onTheLine: Math.abs(margin - least) < ON_THE_LINE }
}

const degrees = (label: string) => measure(label, 'degrees', { least: -40, greatest: 122 })

/** Dew point, and whether a surface is far enough above it to be coated. */
export const dewPointSum = defineSum({
  name: 'dew-point',
  title: 'Dew point and the surface above it',
  group: 'paint',
  formula:
    'g = ln(RH ÷ 100) + 17.62 × T ÷ (243.12 + T); dew point = 243.12 × g ÷ (17.62 − g); surface − dew point ≥ margin',
  source:
    'Magnus, coefficients of the WMO guide, annex 4.B (as quoted in an instrument maker’s handbook, read). ISO 8502-4 guides an estimate from these three readings; 3 °C is widely stated with it and with ISO 12944-7.',
  tolerance: '0.05 °C above freezing; within 0.1 °C of the margin it is on the line.',
  hazards: [],
  input: z.strictObject({
    degrees: z.optional(
      choice(
        'Temperatures in',
        ['°C', '°F'],
        { '°C': 'degrees Celsius', '°F': 'degrees Fahrenheit' },
        '°C where nothing is chosen.',
      ),
    ),
    air: degrees('Air, at the panel'),
    humidity: measure('Relative humidity', '%', { above: 0, greatest: 100 }),
    surface: z.optional(degrees('Surface of the panel')),
    margin: z.optional(
      measure('Margin agreed', 'degrees difference', {
        above: 0,
        greatest: 30,
        help: '3 °C where nothing more is agreed; never less.',
      }),
    ),
  }),
  reckon(input) {
    const own = input.degrees ?? '°C'
    const other = `${own} difference` as const
    const inC = (value: number) => convert(value, own, '°C')
    const air = inC(input.air)
    const least =
      input.margin === undefined ? LEAST_MARGIN : convert(input.margin, other, '°C difference')
    if (air < -40 || air > 50)
      return refuse(fault('air', `Air: −40 to 50 °C; this is ${air.toFixed(1)} °C.`))
    if (input.humidity <= 1)
      return refuse(
        ask(
          'humidity',
          `Relative humidity ${input.humidity}: is ${input.humidity} % meant, or ${input.humidity * 100} %?`,
        ),
      )
    if (least < LEAST_MARGIN)
      return refuse(
        fault('margin', 'Margin agreed: 3 °C (5.4 °F) or more. It is only ever agreed upward.'),
      )
    const warnings = [
      'Readings are taken at the panel; older than half an hour they say nothing of now (common practice).',
      ...(input.humidity > USUAL_HUMIDITY
        ? [`Over ${USUAL_HUMIDITY} % most data sheets stop, whatever the dew point.`]
        : []),
      ...(air < 0
        ? ['Below freezing this is the dew point over water, and coating is refused anyway.']
        : []),
    ]
    const dew = dewPoint(air, input.humidity)
    const shownDew = figure('dew point', 'Dew point', convert(dew, '°C', own), own, 1)
    const g = Math.log(input.humidity / 100) + (17.62 * air) / (243.12 + air)
    const working = [`g = ${g.toFixed(5)}; dew point = ${dew.toFixed(2)} °C`]
    if (input.surface === undefined) return result([shownDew], { working, warnings })
    const surface = inC(input.surface)
    const { margin, passes, onTheLine } = dewMargin(air, input.humidity, surface, least)
    return result(
      [
        shownDew,
        figure('above', 'Surface above it by', convert(margin, '°C difference', other), own, 1),
        figure('needed', 'Surface needed', convert(dew + least, '°C', own), own, 1),
      ],
      {
        verdict: {
          passes,
          words: `${passes ? 'Dry enough to start' : 'Too near the dew point'}${onTheLine ? ': on the line' : ''}`,
        },
        working: [
          ...working,
          `${surface.toFixed(1)} − ${dew.toFixed(2)} = ${margin.toFixed(2)} °C, at least ${least.toFixed(1)}`,
        ],
        warnings: onTheLine
          ? [
              ...warnings,
              'On the line: within 0.1 °C two good formulas can disagree. Measure again, or warm the panel.',
            ]
          : warnings,
      },
    )
  },
})
