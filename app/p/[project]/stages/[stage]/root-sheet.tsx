'use client'
import Link from 'next/link'
import { Sheet } from '@/app/_ui/paper.tsx'
import { pathOf } from '@/app/_ui/paths.ts'
import { AskButton } from '@/app/_ui/press/ask-button.tsx'
import { waysTo } from '@/app/_ui/press/clearing.ts'
import { CommandButton } from '@/app/_ui/press/command-button.tsx'
import { Outcome } from '@/app/_ui/press/outcome.tsx'
import { rootChain } from '@/lib/gate/root-chain.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { Stage } from '@/lib/record/entities/work.ts'
import { stageNumber } from '@/lib/words/labels.ts'
import { entityName } from '@/lib/words/names.ts'
import { sentence } from '@/lib/words/sentence.ts'

/** The first cause further up, as a string of knots down to this stage, with who clears it and the press that does. */
export function RootSheet({ stage }: { readonly stage: Stage }) {
  const { record, reader } = useProject()
  const causes = rootChain(record, stage, reader.now)
  const count = causes.reduce((sum, cause) => sum + cause.holds.length, 0)
  const root = causes[0]
  const steps = root?.chain ?? []
  const top = steps.at(-1)
  if (root === undefined || top === undefined || top.condition.rule === 'unknown') return null
  // A cause that is the one condition itself says nothing new.
  if (steps.length < 2 && root.holds.length < 2) return null
  const words = sentence(top.condition, record, reader)
  const ways = waysTo(top.condition, record, reader)
  const path = pathOf(record, root.root)
  return (
    <Sheet title="The root" note={`behind ${root.holds.length} of ${count}`}>
      <p>
        {root.holds.length > 1
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
            <AskButton
              key="ask"
              condition={top.condition}
              stage={top.stage}
              to={way.to}
              outcome={Outcome}
            />
          )
        })}
        {path !== null && !ways.some((way) => way.way === 'go' && way.href === path) && (
          <Link className="btn btn-line btn-wide" href={path}>
            Open {entityName(root.root, record)}
          </Link>
        )}
      </div>
    </Sheet>
  )
}
