import { abrasive } from './abrasive.ts'
import { bearingClearance } from './bearing-clearance.ts'
import { brakeHydraulics } from './brake-hydraulics.ts'
import { cableDrop } from './cable-drop.ts'
import { cableSize } from './cable-size.ts'
import { chargedHours } from './charged-hours.ts'
import { clockedHours } from './clocked-hours.ts'
import { cloth } from './cloth.ts'
import { coilSpring } from './coil-spring.ts'
import { compressionRatio } from './compression-ratio.ts'
import { compressionSpread } from './compression-spread.ts'
import { conversion } from './conversion.ts'
import { coolantFreeze } from './coolant-freeze.ts'
import { coolantShare } from './coolant-share.ts'
import { coolantTopUp } from './coolant-top-up.ts'
import { cornerWeights } from './corner-weights.ts'
import { cure } from './cure.ts'
import { dewPointSum } from './dew-point.ts'
import { filmByEightyTwenty, filmBySpots } from './film.ts'
import { flush } from './flush.ts'
import { fuelUse } from './fuel-use.ts'
import { fuseSize } from './fuse-size.ts'
import { gearing } from './gearing.ts'
import { hides } from './hides.ts'
import { efficiency, threePoint, timeToFinish } from './hours-estimate.ts'
import { masterChange } from './master-change.ts'
import { mixCorrection } from './mix-correction.ts'
import { oilPressure } from './oil-pressure.ts'
import { mixedSolids, paintQuantity, volumeRatio, wetFilm } from './paint.ts'
import { panelGap } from './panel-gap.ts'
import { piping } from './piping.ts'
import { primingPressure } from './priming-pressure.ts'
import { ringGap } from './ring-gap.ts'
import { speedometer } from './speedometer.ts'
import { splitSum } from './split-sum.ts'
import { stagedInvoice } from './staged-invoice.ts'
import type { Sum } from './sum.ts'
import { taxInclusive } from './tax-inclusive.ts'
import { taxLines } from './tax-lines.ts'
import { toeDegrees } from './toe-degrees.ts'
import { toeMillimetres } from './toe-millimetres.ts'
import { torqueAdapter } from './torque-adapter.ts'
import { torqueAngle } from './torque-angle.ts'
import { torqueUnits } from './torque-units.ts'
import { wheelRate } from './wheel-rate.ts'

/** Every sum of the bench, shelf by shelf. */
export const allSums: readonly Sum[] = [
  mixCorrection,
  volumeRatio,
  mixedSolids,
  paintQuantity,
  wetFilm,
  dewPointSum,
  cure,
  filmBySpots,
  filmByEightyTwenty,
  abrasive,
  compressionRatio,
  compressionSpread,
  ringGap,
  bearingClearance,
  oilPressure,
  primingPressure,
  coolantFreeze,
  coolantShare,
  coolantTopUp,
  torqueUnits,
  torqueAdapter,
  torqueAngle,
  cableDrop,
  cableSize,
  fuseSize,
  gearing,
  speedometer,
  brakeHydraulics,
  masterChange,
  coilSpring,
  wheelRate,
  cornerWeights,
  toeDegrees,
  toeMillimetres,
  panelGap,
  flush,
  hides,
  cloth,
  piping,
  taxLines,
  taxInclusive,
  splitSum,
  stagedInvoice,
  clockedHours,
  chargedHours,
  efficiency,
  threePoint,
  timeToFinish,
  conversion,
  fuelUse,
]

/** The sum of that name; undefined where there is none. */
export const sumNamed = (name: string): Sum | undefined => allSums.find((sum) => sum.name === name)
