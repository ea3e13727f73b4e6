import type { Condition } from '../record/condition.ts'
import type { Check } from '../record/entities/work.ts'
import { badInput } from './bad-input.ts'

type Asked = Pick<Check, 'type' | 'unit' | 'least' | 'greatest'>

/** Whether a unit begins with a number: then it is a limit that was meant. */
export const beginsWithFigure = (unit: string): boolean => /^[+-]?[\d.,]*\d(?=\s|$)/.test(unit)

/** What is wrong with the limits of a check: only readings have any, and the least is not above the greatest. `within`: where its fields stand. */
export function wrongLimits(entity: string, asked: Asked, within = ''): Condition[] {
  const { type, unit, least, greatest } = asked
  if (type !== 'reading' && (unit !== null || least !== null || greatest !== null))
    return [badInput(entity, `${within}type`, 'only a reading has a unit and limits')]
  if (unit !== null && beginsWithFigure(unit))
    return [badInput(entity, `${within}unit`, 'a unit doesn’t begin with a number')]
  return least !== null && greatest !== null && least > greatest
    ? [badInput(entity, `${within}least`, 'the least is more than the greatest')]
    : []
}
