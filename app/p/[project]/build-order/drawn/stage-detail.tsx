'use client'
import Link from 'next/link'
import { projectPath } from '@/app/_ui/paths.ts'
import { StateMark } from '@/app/_ui/state-mark.tsx'
import { gateOf } from '@/lib/gate/gate.ts'
import { linksFrom, linksTo } from '@/lib/gate/indexes.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { LaidStage } from '@/lib/plan/laid-out.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import { type ShownState, stageNumber } from '@/lib/words/labels.ts'
import { floatWords, laidDays, sketchedWords, waitsForWords } from '@/lib/words/laid.ts'
import { partyName } from '@/lib/words/names.ts'
import { sentence } from '@/lib/words/sentence.ts'

/** So many of the things that it waits for are told here; the stage's card has all. */
const MOST = 3

/** What lies behind a card on the wall: how it stands, its days, what it waits for, and the way to it. */
export function StageDetail({
  stage,
  laid,
  state,
  onClose,
}: {
  readonly stage: Stage
  readonly laid: LaidStage
  readonly state: ShownState
  readonly onClose: () => void
}) {
  const { record, reader } = useProject()
  const number = stageNumber(stage.number)
  const conditions =
    state === 'ready' || state === 'waiting' || state === 'held'
      ? gateOf(record, reader.now).conditions(stage)
      : []
  const facts = [...new Set(conditions.map((one) => sentence(one, record, reader).fact))]
  const numbers = (ids: readonly string[]) =>
    ids
      .flatMap((id) => record.stages.rows.get(id) ?? [])
      .filter(({ removedAt }) => removedAt === null)
      .map((one) => one.number)
      .toSorted((a, b) => a - b)
      .map(stageNumber)
      .join(', ')
  const after = numbers(linksTo(record.links, stage.id).map(({ from }) => from))
  const before = numbers(linksFrom(record.links, stage.id).map(({ to }) => to))
  const told = [
    waitsForWords(laid, record, reader),
    floatWords(laid),
    ...sketchedWords(laid, reader),
  ].filter((words) => words !== '')
  return (
    <section className="sheet-foot drawn-detail stack tight" aria-label={`${number} ${stage.name}`}>
      <div className="row spread">
        <p className="big">
          {number} · {stage.name}
        </p>
        <StateMark state={state} />
      </div>
      <p>
        {partyName(stage.party, record)} · {laidDays(laid, reader)}
        {after !== '' && (
          <>
            {' '}
            · after <b>{after}</b>
          </>
        )}
        {before !== '' && (
          <>
            {' '}
            · before <b>{before}</b>
          </>
        )}
      </p>
      {facts.length > 0 && (
        <ul className="drawn-facts">
          {facts.slice(0, MOST).map((fact) => (
            <li key={fact}>{fact}</li>
          ))}
          {facts.length > MOST && <li>and {facts.length - MOST} more</li>}
        </ul>
      )}
      {told.length > 0 && <p className="small">{told.join(' ')}</p>}
      <div className="row">
        <Link
          prefetch={false}
          className="btn btn-small"
          href={projectPath(record.id, `stages/${stage.id}`)}
        >
          Open {number}
        </Link>
        <button type="button" className="btn btn-line btn-small" onClick={onClose}>
          Close
        </button>
      </div>
    </section>
  )
}
