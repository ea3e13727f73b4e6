'use client'
import Link from 'next/link'
import { useEffect, useState } from 'react'
import { Head } from '@/app/_ui/paper.tsx'
import { keptFor } from '@/lib/live/phone/kept-views.ts'
import { openPhoneStore } from '@/lib/live/phone/phone-store.ts'
import { phonePerson } from '@/lib/live/phone/whose-phone.ts'
import { stageNumber } from '@/lib/words/labels.ts'
import { carry, type WorkedSum } from './carried.ts'
import { type ForStage, stagePath } from './for-stage.ts'

interface OpenStage extends ForStage {
  readonly name: string
  readonly car: string
}

/** States in which a stage takes evidence. */
const OPEN: ReadonlySet<string> = new Set(['in work', 'paused', 'ended', 'in doubt'])

/** Takes a worked sum to a stage: the one that asked for it, or one of the person's own that are open. */
export function PutOnStage({
  asked,
  sum,
}: {
  readonly asked: ForStage | null
  readonly sum: Omit<WorkedSum, 'stage'>
}) {
  const [open, setOpen] = useState<readonly OpenStage[] | null>(null)
  useEffect(() => {
    let stays = true
    void openStages()
      .catch(() => [])
      .then((found) => stays && setOpen(found))
    return () => {
      stays = false
    }
  }, [])
  const to = (stage: ForStage) => () => carry({ ...sum, stage: stage.stage })
  if (asked !== null) {
    const known = open?.find(({ stage }) => stage === asked.stage)
    return (
      <Link className="btn btn-wide" prefetch={false} href={stagePath(asked)} onClick={to(asked)}>
        {known === undefined ? 'Put it on the stage' : `Put it on ${known.name}`}
      </Link>
    )
  }
  if (open === null) return null
  return (
    <section className="sheet stack tight no-print">
      <Head title="Put it on a stage" note={open.length} />
      {open.length === 0 && (
        <p>
          No open stage of yours is kept on this phone. Open the stage and press <b>Work it out</b>{' '}
          there.
        </p>
      )}
      <ul className="ruled">
        {open.map((stage) => (
          <li key={stage.stage}>
            <Link className="row-link" prefetch={false} href={stagePath(stage)} onClick={to(stage)}>
              {stage.name}
            </Link>
            <p className="small soft">{stage.car}</p>
          </li>
        ))}
      </ul>
    </section>
  )
}

/** Open stages of the person's own shop, from the cars that this phone keeps. */
async function openStages(): Promise<readonly OpenStage[]> {
  const person = phonePerson()
  if (person === null) return []
  const phone = await openPhoneStore()
  try {
    return (await keptFor(phone, person)).flatMap((kept) => {
      if (kept.kind !== 'project') return []
      const { entities, view } = kept.view
      const car = entities.find((entity) => entity.kind === 'project')?.name ?? ''
      return entities.flatMap((entity) =>
        entity.kind === 'stage' &&
        entity.party === view.party &&
        entity.removedAt === null &&
        OPEN.has(entity.state)
          ? [
              {
                project: kept.record,
                stage: entity.id,
                name: `${stageNumber(entity.number)} · ${entity.name}`,
                car,
              },
            ]
          : [],
      )
    })
  } finally {
    phone.close()
  }
}
