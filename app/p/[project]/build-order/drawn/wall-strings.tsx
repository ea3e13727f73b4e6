import { memo } from 'react'
import { runStrings, type Strung, stringsOf } from '@/lib/plan/drawn/strings.ts'
import type { Wall } from '@/lib/plan/drawn/wall.ts'
import type { Link } from '@/lib/record/entities/work.ts'
import { rem } from './rem.ts'

const KNOT_PX = 7

/** The strings on the wall: the critical run, thick and knotted, and those of the one stage that is looked at. */
export const WallStrings = memo(function WallStrings({
  wall,
  run,
  links,
  at,
}: {
  readonly wall: Wall
  readonly run: readonly string[]
  readonly links: readonly Link[]
  readonly at: string | null
}) {
  return (
    <svg
      className="drawn-strings"
      viewBox={`0 0 ${wall.width} ${wall.height}`}
      style={{ width: rem(wall.width), height: rem(wall.height) }}
      aria-hidden="true"
    >
      {at !== null && stringsOf(wall, at, links).map(({ id, path }) => <path key={id} d={path} />)}
      {runStrings(wall, run).map((strung) => (
        <Knotted key={strung.id} strung={strung} />
      ))}
    </svg>
  )
})

function Knotted({ strung: { path, knot } }: { readonly strung: Strung }) {
  const { x, y } = knot
  return (
    <>
      <path className="drawn-run" d={path} />
      <path
        className="drawn-run-knot"
        d={`M${x - KNOT_PX * 2 - 3} ${y}l${KNOT_PX} ${-KNOT_PX}l${KNOT_PX} ${KNOT_PX}l${-KNOT_PX} ${KNOT_PX}z`}
      />
    </>
  )
}
