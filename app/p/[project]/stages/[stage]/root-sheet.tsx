'use client'
import Link from 'next/link'
import { AskButton } from '@/app/_ui/ask-button.tsx'
import { waysTo } from '@/app/_ui/clearing.ts'
import { CommandButton } from '@/app/_ui/command-button.tsx'
import { Sheet } from '@/app/_ui/paper.tsx'
import { pathOf } from '@/app/_ui/paths.ts'
import { gateOf } from '@/lib/gate/gate.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { Condition } from '@/lib/record/condition.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import { stageNumber } from '@/lib/words/labels.ts'
import { entityName } from '@/lib/words/names.ts'
import { sentence } from '@/lib/words/sentence.ts'

interface Root {
  readonly entity: string
  readonly count: number
  readonly condition: Condition
}

/** The cause behind most of the conditions; of equals the first. */
function mainRoot(conditions: readonly Condition[]): Root | null {
  const counts = new Map<string, Root>()
  for (const condition of conditions) {
    const known = counts.get(condition.root)
    counts.set(condition.root, {
      entity: condition.root,
      count: (known?.count ?? 0) + 1,
      condition: known?.condition ?? condition,
    })
  }
  return [...counts.values()].reduce<Root | null>(
    (best, root) => (best === null || root.count > best.count ? root : best),
    null,
  )
}

/** The first cause further up, as a string of knots down to this stage, with who clears it and the press that does. */
export function RootSheet({
  stage,
  conditions,
}: {
  readonly stage: Stage
  readonly conditions: readonly Condition[]
}) {
  const { record, reader } = useProject()
  const root = mainRoot(conditions)
  if (root === null || root.condition.rule === 'unknown') return null
  const gate = gateOf(record, reader.now)
  const start = gate.conditions(stage).find((condition) => condition === root.condition)
  const steps = start === undefined ? [] : gate.chain(stage, start)
  const top = steps.at(-1)
  // A cause that is the one condition itself says nothing new.
  if (top === undefined || (steps.length < 2 && root.count < 2)) return null
  const words = sentence(top.condition, record, reader)
  const ways = waysTo(top.condition, record, reader)
  const path = pathOf(record, root.entity)
  return (
    <Sheet title="The root" note={`behind ${root.count} of ${conditions.length}`}>
      <p>
        {root.count > 1
          ? 'One thing holds several of these. Clear it, and the rest can follow.'
          : 'The cause lies further up. Clear it, and the rest can follow.'}
      </p>
      <ol className="string">
        {steps.toReversed().map((step, n) => {
          const said = sentence(step.condition, record, reader)
          return (
            <li key={step.stage} className={n === 0 ? 'root' : undefined}>
              <h3>{said.fact}</h3>
              {n === 0 && said.detail !== '' && <p>{said.detail}</p>}
              <p className="small">
                keeps {stageNumber(record.stages.rows.get(step.stage)?.number ?? 0)} from starting
              </p>
            </li>
          )
        })}
      </ol>
      <div className="stack tight">
        {words.who !== '' && <p>{words.who}</p>}
        {ways.map((way) => {
          if (way.way === 'go') {
            return (
              <Link key="go" className="btn btn-wide" href={way.href}>
                {way.label}
              </Link>
            )
          }
          return way.way === 'press' ? (
            <CommandButton key="press" name={way.clearing.command} input={way.clearing.input} wide>
              {way.label}
            </CommandButton>
          ) : (
            <AskButton key="ask" condition={top.condition} stage={top.stage} to={way.to} />
          )
        })}
        {path !== null && !ways.some((way) => way.way === 'go' && way.href === path) && (
          <Link className="btn btn-line btn-wide" href={path}>
            Open {entityName(root.entity, record)}
          </Link>
        )}
      </div>
    </Sheet>
  )
}
