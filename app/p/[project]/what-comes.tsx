'use client'
import Link from 'next/link'
import { EmptyState, Sheet } from '@/app/_ui/paper.tsx'
import { pathOf } from '@/app/_ui/paths.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import { day } from '@/lib/words/dates.ts'
import { coming } from './coming.ts'

const SHOWN = 8

/** What is agreed, promised or runs by the clock, by day. */
export function WhatComes() {
  const { record, reader } = useProject()
  const comes = coming(record, reader)
  if (comes.length === 0) {
    return (
      <EmptyState title="No day is set">
        <p>No slot is to come, no part is promised, nothing cures.</p>
      </EmptyState>
    )
  }
  return (
    <Sheet title="What is next">
      <ol className="string">
        {comes.slice(0, SHOWN).map((one) => {
          const path = pathOf(record, one.entity)
          const title = `${day(one.when, reader)} · ${one.title}`
          return (
            <li key={one.key} className={one.loose ? 'loose' : undefined}>
              <h3>
                {path === null ? (
                  title
                ) : (
                  <Link className="plain" href={path}>
                    {title}
                  </Link>
                )}
              </h3>
              <p className="small">{one.detail}</p>
            </li>
          )
        })}
      </ol>
    </Sheet>
  )
}
