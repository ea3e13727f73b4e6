import { all } from '../../record/table.ts'
import { type GateRule, met, unmet } from '../rule.ts'
import { clearedOff } from './fitted.ts'

/** No hot work while anything that holds fuel is on the car. Never conceded (HSE on fire and fuel tanks, read). */
export const hotWork: GateRule = (record, stage) => {
  if (!stage.hazards.includes('hot work')) return []
  return all(record.assemblies)
    .filter(({ holdsFuel }) => holdsFuel)
    .map(({ id, host }) =>
      host === null
        ? met('must-be-off', id)
        : unmet({
            rule: 'must-be-off',
            entity: id,
            root: id,
            since: null,
            concedable: false,
            ...clearedOff(record, id),
            assembly: id,
          }),
    )
}
