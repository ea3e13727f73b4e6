'use client'
import { Card } from '@/app/_ui/paper.tsx'
import { withFitted } from '@/lib/custody/fitted.ts'
import { stagesOn } from '@/lib/gate/indexes.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { Assembly } from '@/lib/record/entities/things.ts'
import type { ProjectRecord } from '@/lib/record/project-record.ts'
import { exactSpan, moment, since } from '@/lib/words/dates.ts'
import { atStart, listed, partyName } from '@/lib/words/names.ts'
import type { Reader } from '@/lib/words/reader.ts'
import { CarDrawing } from './car-drawing.tsx'
import { curesOn } from './coming.ts'
import { mainAssembly } from './main-assembly.ts'

/** Where the shell is now and what is done to it; what is on it and what is off it, drawn and in words. */
export function WhereItIs() {
  const { record, reader, bays } = useProject()
  const shell = mainAssembly(record)
  if (shell === undefined) {
    return (
      <Card title="Nothing entered yet">
        <p>The lead shop enters the car’s assemblies and the build order.</p>
      </Card>
    )
  }
  const others = [...record.assemblies.rows.values()].filter(({ id }) => id !== shell.id)
  // What is fitted to something that is off the car is off with it, and is not told for itself.
  const withShell = new Set(withFitted(record, [shell.id]))
  const on = others.filter(({ id }) => withShell.has(id))
  const off = others.filter(({ host }) => host === null)
  const slot = [...record.slots.rows.values()].find(
    (one) =>
      one.assembly === shell.id &&
      one.state === 'agreed' &&
      one.from <= reader.now &&
      reader.now < one.to,
  )
  const bay = bays.find(({ id }) => id === slot?.bay)
  const cure = curesOn(record, shell.id, reader.now)[0]
  return (
    <Card title={title(shell, record, reader, bay?.name)} under="Where it is now">
      <CarDrawing assemblies={[shell, ...others]} />
      <div className="stack tight">
        {cure !== undefined && (
          <p>
            It cures until <b>{moment(cure.until, reader)}</b>.
          </p>
        )}
        {slot !== undefined && (
          <p>
            {bay === undefined ? 'Its bay' : bay.name} is agreed:{' '}
            {exactSpan(slot.from, slot.to, reader)}.
          </p>
        )}
        <p>
          {on.length === 0
            ? `Nothing is fitted to the ${shell.name.toLowerCase()}.`
            : `On it: ${names(on, reader)}.`}{' '}
          {off.length > 0 && `Off the car: ${names(off, reader)}.`}
        </p>
        <p className="small soft">
          {atStart(partyName(shell.custodian, record))} answers for it, {since(shell.since, reader)}
          .
        </p>
      </div>
    </Card>
  )
}

const names = (assemblies: readonly Assembly[], reader: Reader): string =>
  listed(
    assemblies.map(({ name }) => name),
    reader.locale,
  )

function title(
  shell: Assembly,
  record: ProjectRecord,
  reader: Reader,
  bay: string | undefined,
): string {
  const where = `${shell.name} at ${partyName(shell.custodian, record, reader)}`
  const work = stagesOn(record.stages, shell.id).find(({ state }) => state === 'in work')
  const place = bay === undefined ? where : `${where}, ${bay}`
  return work === undefined ? place : `${place}: ${work.name}`
}
