import { Mark } from '@/app/_ui/mark.tsx'
import type { Hazard } from '@/lib/record/entities/work.ts'
import { cautionFor, OUTRANKED_BY } from '@/lib/words/cautions.ts'

/** The usual cautions against these hazards, folded under their names; `unfolded` on paper, where nothing can be opened. */
export function Cautions({
  hazards,
  unfolded = false,
}: {
  readonly hazards: readonly Hazard[]
  readonly unfolded?: boolean
}) {
  if (hazards.length === 0) return null
  const cautions = hazards.map((hazard) => ({ hazard, ...cautionFor(hazard) }))
  const names = cautions.map(({ title }) => title).join(' · ')
  const said = (
    <>
      {cautions.map(({ hazard, title, says }) => (
        <p key={hazard}>
          <b>{title}.</b> {says.join(' ')}
        </p>
      ))}
      <p className="small">{OUTRANKED_BY}</p>
    </>
  )
  if (unfolded) return <div className="cautions stack tight">{said}</div>
  return (
    <details className="cautions">
      <summary>
        <span>
          <Mark name="caution" /> <b>Cautions:</b> {names}
        </span>
      </summary>
      <div className="stack tight">{said}</div>
    </details>
  )
}
