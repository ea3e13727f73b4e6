// Apart from the sum that shows it: the gate weighs on every page.

/** The margin of a surface over the dew point, in °C, widely stated with ISO 8502-4 and ISO 12944-7: only ever agreed upward. */
export const LEAST_MARGIN = 3
/** So near to the line two good formulas can disagree, in °C. */
const ON_THE_LINE = 0.1

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
