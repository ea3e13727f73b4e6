import * as z from 'zod/mini'
import { dewMargin, dewPoint, LEAST_MARGIN } from './dew-margin.ts'
import { choice, measure } from './fields.ts'
import { ask, asTyped, defineSum, fault, figure, refuse, result } from './sum.ts'
import { convert } from './units.ts'

/** The usual limit of data sheets, in % (given with ISO 12944-7 in secondary texts, read). */
const USUAL_HUMIDITY = 85

/** Older readings say nothing of now, in min: common practice. */
const USUAL_AGE_MIN = 30

/** 0.57 becomes 57, not 56.99999999999999. */
const hundredfold = (value: number): number => Number(`${value}e2`)

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
    minutes: z.optional(measure('Age of the readings', 'min', { least: 0, greatest: 100_000 })),
    oldest: z.optional(
      measure('Oldest that counts', 'min', {
        above: 0,
        greatest: 1440,
        help: '30 min where the shop has no other limit: common practice.',
      }),
    ),
  }),
  reckon(input, meant) {
    const { minutes, oldest = USUAL_AGE_MIN } = input
    const own = input.degrees ?? '°C'
    const other = `${own} difference` as const
    const inC = (value: number) => convert(value, own, '°C')
    const air = inC(input.air)
    const least =
      input.margin === undefined ? LEAST_MARGIN : convert(input.margin, other, '°C difference')
    if (air < -40 || air > 50)
      return refuse(fault('air', `Air: −40 to 50 °C; this is ${air.toFixed(1)} °C.`))
    if (input.humidity <= 1 && !meant('humidity'))
      return refuse(
        ask(
          'humidity',
          `Relative humidity ${input.humidity}: is ${input.humidity} % meant, or ${hundredfold(input.humidity)} %?`,
          [
            {
              words: `${hundredfold(input.humidity)} %`,
              set: { humidity: hundredfold(input.humidity) },
            },
            asTyped('humidity', `${input.humidity} %`),
          ],
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
    const stale = minutes !== undefined && minutes > oldest
    const { margin, passes, onTheLine } = dewMargin(air, input.humidity, surface, least)
    return result(
      [
        shownDew,
        figure('above', 'Surface above it by', convert(margin, '°C difference', other), own, 1),
        figure('needed', 'Surface needed', convert(dew + least, '°C', own), own, 1),
      ],
      {
        verdict: stale
          ? {
              passes: false,
              words: `Too old to judge by: ${minutes} min, at most ${oldest}. Read again`,
            }
          : air < 0
            ? { passes: false, words: 'Too cold for any coat' }
            : {
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
