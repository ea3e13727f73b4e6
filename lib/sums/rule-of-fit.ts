import { Decimal } from './decimal.ts'
import { choice, measure } from './fields.ts'
import { type Answer, ask, fault, figure, refuse, result } from './sum.ts'

const MM_PER_INCH = '25.4'
/** Over this many times the rule a gap is wide; under the rule it is held. */
const WIDE = '1.5'

/** In what a fit is typed. */
export const fitUnit = choice('In', ['in', 'mm'], { in: 'inches', mm: 'millimetres' })

/** A gap that is typed, in the fit's unit. */
export const gapField = (label: string, help = '') =>
  measure(label, '', { least: 0, greatest: 10, help })

interface Fit {
  readonly unit: 'in' | 'mm'
  /** The bore or journal: its field, its label and between how many inches it lies. */
  readonly field: string
  readonly label: string
  readonly limits: readonly [least: number, greatest: number]
  readonly across: number
  readonly factor: number
  readonly added?: number | undefined
  readonly maker?: number | undefined
  readonly read?: number | undefined
}

/**
 * The least gap by rule, which the maker's figure replaces, and the measured one beside it. Judged from below only: too
 * tight seizes.
 */
export function ruleOfFit(fit: Fit): Answer {
  const inches = (value: number) =>
    fit.unit === 'in' ? new Decimal(value) : new Decimal(value).div(MM_PER_INCH)
  const across = inches(fit.across)
  const [least, greatest] = fit.limits
  if (across.gt(greatest) && fit.unit === 'in')
    return refuse(
      ask(fit.field, `${fit.label} ${fit.across} in is too big: are millimetres meant?`, [
        { words: 'Yes, all in millimetres', set: { unit: 'mm' } },
      ]),
    )
  if (across.lt(least) || across.gt(greatest))
    return refuse(
      fault(
        fit.field,
        `${fit.label}: ${least} to ${greatest} in; this is ${across.toFixed(3)} in.`,
      ),
    )
  const rule = across.times(fit.factor).plus(inches(fit.added ?? 0))
  const wanted = fit.maker === undefined ? rule : inches(fit.maker)
  const whose = fit.maker === undefined ? 'the rule' : 'the maker’s figure'
  const read = fit.read === undefined ? undefined : inches(fit.read)
  return result(
    [
      figure('in', 'At least', wanted.toNumber(), 'in', 4),
      figure('mm', 'At least', wanted.times(MM_PER_INCH).toNumber(), 'mm', 3),
    ],
    {
      working: [
        `${across.toFixed(3)} in × ${fit.factor}${fit.added === undefined ? '' : ` + ${inches(fit.added).toFixed(4)} in`} = ${rule.toFixed(4)} in`,
        ...(fit.maker === undefined
          ? []
          : [`The maker’s figure ${fit.maker} ${fit.unit} replaces the rule.`]),
      ],
      verdict:
        read === undefined
          ? null
          : read.lt(wanted)
            ? { passes: false, words: `Under ${whose}: too tight seizes. Hold it.` }
            : { passes: true, words: `Not under ${whose}` },
      warnings:
        read?.gt(wanted.times(WIDE)) === true
          ? [`More than one and a half times ${whose}: measure it again.`]
          : [],
    },
  )
}
