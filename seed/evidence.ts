import type { Check } from '../lib/record/entities/work.ts'
import type { Sha256 } from '../lib/record/scalars.ts'
import type { Car } from './car.ts'
import { picture } from './pictures.ts'
import { sheet } from './sheets.ts'
import type { Yard } from './yard.ts'

/** What is recorded for a check: a reading well inside its limits, a drawing that stands for the photo, a sheet. */
export async function evidence(
  yard: Yard,
  car: Car,
  key: string,
  check: Check,
  who: string,
  given: number | undefined,
): Promise<{ value?: number; files?: readonly Sha256[] }> {
  switch (check.type) {
    case 'reading':
      return { value: given ?? plausible(check) }
    case 'photo':
      return { files: [await yard.keep(car.id(), picture(car.stageSpec(key).group), who)] }
    case 'document': {
      const bytes = sheet([car.spec.name, car.stageSpec(key).name, check.name, `Signed: ${who}`])
      return { files: [await yard.keep(car.id(), bytes, who)] }
    }
    case 'tick':
    case 'signature':
      return {}
  }
}

/** A reading as a good shop gets it: inside its limits, nearer to the middle than to either end. */
export function plausible({ least, greatest }: Pick<Check, 'least' | 'greatest'>): number {
  const raw = between(least, greatest)
  const span =
    least !== null && greatest !== null ? greatest - least : Math.max(Math.abs(raw), 0.001)
  const places = Math.max(0, 2 - Math.floor(Math.log10(span)))
  return Number(raw.toFixed(Math.min(places, 6)))
}

function between(least: number | null, greatest: number | null): number {
  if (least !== null && greatest !== null) return least + (greatest - least) * 0.45
  if (greatest !== null) return greatest > 0 ? greatest * 0.6 : greatest * 1.2
  if (least !== null) return least > 0 ? least * 1.2 : least + 1
  return 12
}
