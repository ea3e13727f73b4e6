'use client'
import { Head } from '@/app/_ui/paper.tsx'
import type { Stage } from '@/lib/record/entities/work.ts'
import { Give } from './give.tsx'
import { Merge } from './merge.tsx'
import { Move } from './move.tsx'
import { Split } from './split.tsx'

/** The build order changed while the work is under way: each change shows what it would do before it is pressed. */
export function Rework({ stage, lead }: { readonly stage: Stage; readonly lead: boolean }) {
  const planned = stage.state === 'planned'
  const rests = planned || stage.state === 'paused' || stage.state === 'reopened'
  if (!planned && !(lead && rests)) return null
  return (
    <section className="sheet stack">
      <Head title="Change the build order" />
      <p className="small">
        Each shows what it would do before you press. What is signed off stands.
      </p>
      {planned && <Split key={`split ${stage.id}`} stage={stage} />}
      {planned && <Merge key={`merge ${stage.id}`} stage={stage} />}
      {planned && lead && <Move key={`move ${stage.id}`} stage={stage} />}
      {lead && <Give key={`give ${stage.id} ${stage.party}`} stage={stage} />}
    </section>
  )
}
