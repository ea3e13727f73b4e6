'use client'
import Link from 'next/link'
import { Mark } from '@/app/_ui/mark.tsx'
import { projectPath } from '@/app/_ui/paths.ts'
import { AskButton } from '@/app/_ui/press/ask-button.tsx'
import { waysTo } from '@/app/_ui/press/clearing.ts'
import { Outcome } from '@/app/_ui/press/outcome.tsx'
import { markOf } from '@/app/_ui/state-mark.tsx'
import type { SheetWaiting } from '@/lib/gate/day-sheet.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import { moment } from '@/lib/words/dates.ts'
import { counted } from '@/lib/words/money.ts'
import { listed, partyName, stageName } from '@/lib/words/names.ts'
import { sentence } from '@/lib/words/sentence.ts'

/** Stages that wait for the same thing: named once, with all that it holds. */
export interface WaitingGroup {
  readonly key: string
  readonly first: SheetWaiting
  readonly lines: readonly SheetWaiting[]
}

/** Waiting stages by the cause that holds them, those of one cause together. */
export function groupWaiting(lines: readonly SheetWaiting[]): readonly WaitingGroup[] {
  const groups = new Map<string, SheetWaiting[]>()
  for (const line of lines) {
    const key = `${line.project} ${line.root} ${line.cause.rule} ${line.cause.entity} ${line.until ?? ''}`
    const group = groups.get(key)
    if (group === undefined) groups.set(key, [line])
    else group.push(line)
  }
  return [...groups].flatMap(([key, group]) => {
    const [first] = group
    return first === undefined ? [] : [{ key, first, lines: group }]
  })
}

/** How many stand open; a long row of followers is folded. */
const OPEN = 3
/** How many lie in the fold; the build order has the others, and a search. */
const FOLDED = 100

/** On whom some stages wait in the end, for what, which they are, and the question to who can clear it. */
export function WaitingLines({ group }: { readonly group: WaitingGroup }) {
  const { record, reader } = useProject()
  const { first, lines } = group
  const cause = sentence(first.cause, record, reader)
  const clock = first.until !== null
  const names = first.on.map((party) => partyName(party, record, reader))
  const asking = askable(lines, reader.view.party)
  const rest = lines.slice(OPEN)
  return (
    <>
      <Mark name={clock ? 'clock' : markOf(first.status)} />
      <div className="stack tight">
        <h3>
          Waits on {clock || names.length === 0 ? 'the clock' : listed(names, reader.locale, 'or')}
        </h3>
        <p>
          {cause.fact}.{first.until === null ? '' : ` Until ${moment(first.until, reader)}.`}
        </p>
        <StageLinks lines={lines.slice(0, OPEN)} />
        {rest.length > 0 && (
          <details>
            <summary>{counted(rest.length, 'more stage', 'more stages', reader.locale)}</summary>
            <StageLinks lines={rest.slice(0, FOLDED)} />
            {rest.length > FOLDED && (
              <p>
                <Link
                  className="row-link"
                  prefetch={false}
                  href={projectPath(record.id, 'build-order')}
                >
                  The others stand in the build order
                </Link>
              </p>
            )}
          </details>
        )}
        <p className="small soft">{record.projects.rows.get(record.id)?.name}</p>
        <OwnPress group={group} />
        {!clock && asking !== undefined && (
          <AskButton
            condition={asking.condition}
            stage={asking.stage}
            to={asking.to}
            outcome={Outcome}
          />
        )}
      </div>
    </>
  )
}

/** The way to what the reader's own shop has to do for it, where that is a screen. */
function OwnPress({ group: { first } }: { readonly group: WaitingGroup }) {
  const { record, reader } = useProject()
  const go = waysTo(first.cause, record, reader).find(({ way }) => way === 'go')
  return go?.way === 'go' ? (
    <Link className="btn btn-line" prefetch={false} href={go.href}>
      {go.label}
    </Link>
  ) : null
}

function StageLinks({ lines }: { readonly lines: readonly SheetWaiting[] }) {
  const { record } = useProject()
  return (
    <ul>
      {lines.map((line) => (
        <li key={line.stage}>
          <Link
            className="row-link"
            prefetch={false}
            href={projectPath(record.id, `stages/${line.stage}`)}
          >
            {stageName(line.stage, record)}
          </Link>
        </li>
      ))}
    </ul>
  )
}

/** The first condition that one of those who hold it can clear: what a question would be about. */
function askable(lines: readonly SheetWaiting[], own: string) {
  for (const line of lines) {
    for (const condition of line.conditions) {
      const to = condition.clearedBy.find((party) => party !== own && line.on.includes(party))
      if (to !== undefined) return { condition, stage: line.stage, to }
    }
  }
  return undefined
}
