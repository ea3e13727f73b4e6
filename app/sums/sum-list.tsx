'use client'
import Link from 'next/link'
import { useState } from 'react'
import { TextField } from '@/app/_ui/form/text-field.tsx'
import { EmptyState, Head, Plate } from '@/app/_ui/paper.tsx'
import { RowList } from '@/app/_ui/row-list.tsx'
import { allSums } from '@/lib/sums/all-sums.ts'
import { groups, type Sum } from '@/lib/sums/sum.ts'
import { atStart } from '@/lib/words/names.ts'
import { type ForStage, stagePath, sumsPath } from './for-stage.ts'

/** All sums of the bench by their shelf; a few letters find one. */
export function SumList({ stage }: { readonly stage: ForStage | null }) {
  const [sought, setSought] = useState('')
  const found = allSums.filter((sum) => hasAll(sum, sought))
  return (
    <main className="page stack" id="content">
      <Plate title="Bench sums" under="Worked here, with or without a network" />
      <WayBack stage={stage} />
      <TextField
        label="Find a sum"
        value={sought}
        onChange={setSought}
        hint="A word of it: dew, gap, torque, hide."
      />
      {found.length === 0 && (
        <EmptyState title="No sum has these words">
          <p>
            <button type="button" className="btn btn-line" onClick={() => setSought('')}>
              Show all sums
            </button>
          </p>
        </EmptyState>
      )}
      <div className="sum-shelves">
        {groups.map((group) => (
          <Shelf
            key={group}
            title={atStart(group)}
            sums={found.filter((sum) => sum.group === group)}
            stage={stage}
          />
        ))}
      </div>
    </main>
  )
}

function Shelf({
  title,
  sums,
  stage,
}: {
  readonly title: string
  readonly sums: readonly Sum[]
  readonly stage: ForStage | null
}) {
  if (sums.length === 0) return null
  return (
    <section className="stack tight">
      <Head title={title} note={sums.length} />
      <RowList className="sheet ruled">
        {sums.map((sum) => (
          <li key={sum.name}>
            <Link className="row-link" prefetch={false} href={sumsPath(stage, sum.name)}>
              {sum.title}
            </Link>
          </li>
        ))}
      </RowList>
    </section>
  )
}

/** To the stage that asked for a sum, else to the work. */
export function WayBack({ stage }: { readonly stage: ForStage | null }) {
  return (
    <p className="way">
      <Link prefetch={false} href={stage === null ? '/day-sheet' : stagePath(stage)}>
        {stage === null ? 'Day sheet' : 'Back to the stage'}
      </Link>
    </p>
  )
}

/** Every word that is sought stands somewhere in what the sum says of itself. */
const hasAll = (sum: Sum, sought: string): boolean => {
  const said = `${sum.title} ${sum.name} ${sum.group} ${sum.formula}`.toLowerCase()
  return sought
    .toLowerCase()
    .split(/\s+/)
    .every((word) => said.includes(word))
}
