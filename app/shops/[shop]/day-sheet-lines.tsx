'use client'
import Link from 'next/link'
import { Mark, type MarkName } from '@/app/_ui/mark.tsx'
import { Tag } from '@/app/_ui/paper.tsx'
import { pathOf, projectPath } from '@/app/_ui/paths.ts'
import { CommandButton } from '@/app/_ui/press/command-button.tsx'
import { markOf } from '@/app/_ui/state-mark.tsx'
import type { Coming } from '@/lib/gate/coming.ts'
import type { SheetTold } from '@/lib/gate/day-sheet.ts'
import { checksOf } from '@/lib/gate/indexes.ts'
import { mayPress } from '@/lib/gate/may-press.ts'
import type { OnUs } from '@/lib/gate/on-us.ts'
import { checkConditions } from '@/lib/gate/sign-off.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import { day, moment, since } from '@/lib/words/dates.ts'
import { label, stateLabel } from '@/lib/words/labels.ts'
import { assemblyName, entityName, partyName, personName, stageName } from '@/lib/words/names.ts'
import { onUsFact } from '@/lib/words/on-us.ts'

const projectName = (record: ReturnType<typeof useProject>['record']): string =>
  record.projects.rows.get(record.id)?.name ?? ''

/** A stage in work: since when, how many checks are in, and the way to its card. */
export function WorkLine({ id }: { readonly id: string }) {
  const { record, reader } = useProject()
  const stage = record.stages.rows.get(id)
  if (stage === undefined) return null
  const checks = checksOf(record.checks, stage.id).length
  const open = checkConditions(record, stage).length
  const ready = open === 0 && stage.state !== 'paused'
  const who = stage.startedBy === null ? '' : ` · ${personName(stage.startedBy, reader.people)}`
  const in_ =
    checks === 0
      ? ''
      : open === 0
        ? ` · all ${checks} checks are in`
        : ` · ${checks - open} of ${checks} checks are in`
  return (
    <>
      <div>
        <h3>
          <Mark name={markOf(stage.state)} label={stateLabel(stage.state)} />{' '}
          {stageName(stage.id, record)}
        </h3>
        <p className="small">
          {projectName(record)}
          {who}
          {stage.startedAt === null ? '' : ` · ${since(stage.startedAt, reader)}`}
          {in_}
        </p>
      </div>
      <Link
        className={ready ? 'btn' : 'btn btn-line'}
        href={projectPath(record.id, `stages/${stage.id}`)}
      >
        {ready ? label('stage.signOff', stage) : stage.state === 'paused' ? 'Open' : 'Add check'}
      </Link>
    </>
  )
}

/** What somebody waits for from this shop, and the way to it. */
export function OnUsLine({ line }: { readonly line: OnUs }) {
  const { record, reader } = useProject()
  const { input, command } = line.press
  const target = Object.values(input).find(
    (value) => typeof value === 'string' && pathOf(record, value) !== null,
  )
  const path =
    pathOf(record, typeof target === 'string' ? target : line.entity) ??
    (line.stage === null ? null : projectPath(record.id, `stages/${line.stage}`))
  const fact = onUsFact(line, record, reader)
  const ownName = partyName(reader.view.party, record)
  return (
    <>
      <Mark name={markOfOnUs(line)} />
      <div>
        <h3>
          {path === null ? (
            fact
          ) : (
            <Link className="plain" href={path}>
              {fact}
            </Link>
          )}
        </h3>
        <p className="small">
          {projectName(record)}
          {line.since === null ? '' : ` · ${since(line.since, reader)}`}
        </p>
        {!mayPress(command, reader.view.role) && (
          <p className="small">A manager of {ownName} presses it.</p>
        )}
        {path !== null && mayPress(command, reader.view.role) && (
          <p>
            <Link className="btn btn-line btn-small" href={path}>
              {label(command, record.stages.rows.get(String(input.stage ?? '')))}
            </Link>
          </p>
        )}
      </div>
    </>
  )
}

const markOfOnUs = (line: OnUs): MarkName => {
  switch (line.kind) {
    case 'hold':
    case 'answer change order':
    case 'choose':
      return 'held'
    case 'confirm':
      return 'doubt'
    case 'countersign':
      return 'signed'
    default:
      return 'waiting'
  }
}

/** Something on its way here. */
export function ComingLine({ coming }: { readonly coming: Coming }) {
  const { record, reader } = useProject()
  const handover = record.handovers.rows.get(coming.entity)
  const names =
    handover === undefined
      ? [entityName(coming.entity, record)]
      : handover.assemblies.map((id) => assemblyName(id, record))
  const from = coming.from === null ? '' : `, from ${partyName(coming.from, record)}`
  const path = pathOf(record, coming.kind === 'assembly' ? (coming.stage ?? '') : coming.entity)
  const after =
    coming.stage === null ? '' : ` After ${stageName(coming.stage, record)} is signed off.`
  const kept = coming.promises > 1 ? ` Promise no. ${coming.promises}.` : ''
  return (
    <>
      <b className="n">{coming.promised === null ? 'No day' : day(coming.promised, reader)}</b>
      <div>
        <p className="row">
          {names.map((name) => (
            <Tag key={name}>
              {path === null ? (
                name
              ) : (
                <Link className="plain" href={path}>
                  {name}
                </Link>
              )}
            </Tag>
          ))}
        </p>
        <p className="small">
          {projectName(record)}
          {from}.{after}
          {kept}
        </p>
      </div>
    </>
  )
}

/** What the lead entered for this shop, to be confirmed. */
export function ToldLine({ line }: { readonly line: SheetTold }) {
  const { record, reader } = useProject()
  const told = record.told.rows.get(line.told)
  return (
    <div className="stack tight">
      <h3>{entityName(line.entity, record)}</h3>
      <p className="small">
        {projectName(record)} · entered for you{' '}
        {told === undefined ? '' : `by ${personName(told.person, reader.people)}`},{' '}
        {moment(line.at, reader)}
      </p>
      <CommandButton name="told.confirm" input={{ told: line.told }} line>
        {label('told.confirm')}
      </CommandButton>
    </div>
  )
}
