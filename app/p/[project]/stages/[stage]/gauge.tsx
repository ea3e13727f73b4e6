import type { CSSProperties } from 'react'
import type { Check } from '@/lib/record/entities/work.ts'

/** A reading between its limits, drawn; the figures beside it say the same. Nothing where there are no two limits. */
export function Gauge({ check }: { readonly check: Check }) {
  const { least, greatest, value } = check
  if (check.type !== 'reading' || check.state === 'missing' || value === null) return null
  if (least === null || greatest === null || greatest <= least) return null
  const margin = (greatest - least) / 2
  const share = (at: number): number =>
    Math.min(100, Math.max(0, ((at - least + margin) / (2 * margin + greatest - least)) * 100))
  const places: CSSProperties & { readonly [name: `--${string}`]: number } = {
    '--lo': share(least),
    '--hi': share(greatest),
    '--v': share(value),
  }
  return (
    <div
      className={check.state === 'out of limits' ? 'gauge gauge-out' : 'gauge'}
      style={places}
      aria-hidden="true"
    />
  )
}
