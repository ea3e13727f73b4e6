import * as z from 'zod/mini'
import { measure } from './fields.ts'
import { COOLANT_WARNINGS, coolantKind, otherCoolant, tooMuchGlycol } from './glycol.ts'
import { defineSum, fault, figure, refuse, result } from './sum.ts'

const percent = (label: string, help = '') => measure(label, '%', { least: 0, greatest: 100, help })

/** How much to drain and replace: x = V·(q − p) ÷ (c − p). */
export const coolantTopUp = defineSum({
  name: 'coolant-top-up',
  title: 'Coolant: drain and replace',
  group: 'engine',
  formula: 'x = system × (wanted − there) ÷ (added − there), all by volume',
  source: 'Arithmetic of mixtures.',
  tolerance: '0.01 L',
  hazards: ['coolant'],
  input: z.strictObject({
    kind: coolantKind,
    system: measure('System', 'L', { above: 0, greatest: 100 }),
    there: percent('Glycol there, by volume'),
    wanted: percent('Wanted, by volume'),
    added: percent('Glycol in what is added, by volume', '100 for neat.'),
  }),
  reckon({ kind, system, there, wanted, added }) {
    const other = otherCoolant(kind) ?? tooMuchGlycol('wanted', 'Wanted', wanted, 'volume')
    if (other !== null) return other
    if (wanted <= there)
      return refuse(fault('wanted', 'Wanted: not more than there is; nothing to add.'))
    if (added <= wanted)
      return refuse(fault('added', 'Glycol in what is added: it must hold more than is wanted.'))
    const litres = (system * (wanted - there)) / (added - there)
    return result([figure('litres', 'Drain, and add', litres, 'L')], {
      working: [
        `${system} × (${wanted} − ${there}) ÷ (${added} − ${there}) = ${litres.toFixed(2)} L`,
      ],
      warnings: COOLANT_WARNINGS,
    })
  },
})
