/** The drawing's frame: the scale runs from LEFT over WIDTH. */
const LEFT = 14
const WIDTH = 312

/** A rule in per cent over the first estimate: a bar up to now with a nick for each earlier yes, this one hatched. */
export function CreepRule({
  steps,
  before,
  after,
  says,
}: {
  /** Hundredths of a per cent after each earlier yes. */
  readonly steps: readonly number[]
  readonly before: number
  readonly after: number
  readonly says: string
}) {
  const highest = Math.max(before, after, ...steps, 0)
  // Under the first estimate there is nothing to measure: the sentence above says it.
  if (highest <= 0) return null
  const every = [1, 2, 5, 10, 20, 50, 100].find((step) => highest / 100 / step <= 7) ?? 200
  const top = Math.ceil(highest / 100 / every) * every
  const x = (hundredths: number) => LEFT + (Math.max(0, hundredths) / 100 / top) * WIDTH
  const ticks = Array.from({ length: top / every + 1 }, (_, n) => n * every)
  const low = Math.min(before, after)
  return (
    <figure>
      <svg className="creep" viewBox="0 0 340 72" role="img" aria-label={says}>
        <defs>
          <pattern
            id="creep-hatch"
            width="6"
            height="6"
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <path d="M0 0h3v6H0z" fill="var(--oxide)" />
          </pattern>
        </defs>
        <rect
          x="1"
          y="29"
          width="338"
          height="40"
          fill="var(--tin)"
          stroke="var(--ink)"
          strokeWidth="2"
        />
        {ticks.map((tick) => (
          <g key={tick}>
            <path d={`M${x(tick * 100)} 30v14`} stroke="var(--ink)" strokeWidth="1.5" />
            <text x={x(tick * 100)} y="62">
              {tick}
            </text>
          </g>
        ))}
        <rect x={LEFT} y="10" width={Math.max(0, x(low) - LEFT)} height="16" fill="var(--ink)" />
        <rect
          x={x(low)}
          y="10"
          width={Math.max(1, x(Math.max(before, after)) - x(low))}
          height="16"
          fill="url(#creep-hatch)"
          stroke="var(--oxide)"
          strokeWidth="2"
        />
        {steps
          .filter((step) => step > 0 && step < low)
          .map((step, n) => (
            <path
              // biome-ignore lint/suspicious/noArrayIndexKey: yeses are never reordered, and two may reach the same figure
              key={n}
              d={`M${x(step)} 10v16`}
              stroke="var(--sheet)"
              strokeWidth="2"
            />
          ))}
      </svg>
      <figcaption className="small soft">
        Per cent over the first estimate. A nick for each earlier yes; hatched: this one.
      </figcaption>
    </figure>
  )
}
