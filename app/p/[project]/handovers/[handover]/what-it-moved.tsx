'use client'
import Link from 'next/link'
import { StageChip } from '@/app/_ui/stage-chip.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import type { Handover } from '@/lib/record/entities/things.ts'
import { all } from '@/lib/record/table.ts'
import { stageNumber } from '@/lib/words/labels.ts'

/** At most so many stages: the build order has the rest. */
const SHOWN = 5

/** The receiver's stages that work on what changes hands, with their state now. */
export function WhatItMoved({ handover }: { readonly handover: Handover }) {
  const { record } = useDesk()
  const moves = new Set<string>(handover.assemblies)
  const stages = all(record.stages)
    .filter(
      (stage) =>
        stage.removedAt === null &&
        stage.party === handover.to &&
        stage.state === 'planned' &&
        stage.assemblies.some((id) => moves.has(id)),
    )
    .toSorted((a, b) => a.number - b.number)
  if (stages.length === 0) return null
  return (
    <section className="sheet stack">
      <div className="head">
        <h2>{handover.state === 'received' ? 'What it moved' : 'What waits for it'}</h2>
      </div>
      <ul className="ruled">
        {stages.slice(0, SHOWN).map((stage) => (
          <li key={stage.id} className="rowend">
            <Link href={`/p/${record.id}/stages/${stage.id}`}>
              {stageNumber(stage.number)} · {stage.name}
            </Link>
            <StageChip stage={stage} />
          </li>
        ))}
      </ul>
      {stages.length > SHOWN && (
        <p className="small soft">and {stages.length - SHOWN} more in the build order</p>
      )}
    </section>
  )
}
