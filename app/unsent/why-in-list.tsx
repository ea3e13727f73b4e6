'use client'
import { useEffect, useState } from 'react'
import { Notice } from '@/app/_ui/paper.tsx'
import type { ProjectView } from '@/lib/command/wire.ts'
import { getProject } from '@/lib/live/http.ts'
import { useLive, useLocale, useNow } from '@/lib/live/live-provider.tsx'
import type { Queued } from '@/lib/live/outbox/unsent-store.ts'
import { openPhoneStore, type UnsentNo } from '@/lib/live/phone/phone-store.ts'
import { readerOf } from '@/lib/live/project-provider.tsx'
import { type ProjectState, projectStateOf } from '@/lib/live/project-state.ts'
import { projectKey } from '@/lib/live/record-keys.ts'
import { sentence } from '@/lib/words/sentence.ts'

/** Why a press was refused, in the words of its project where this phone has that. */
export function WhyInList({ item, no }: { readonly item: Queued; readonly no: UnsentNo }) {
  const [home = ''] = item.lanes
  const state = useProjectAtHand(no.conditions.length > 0 ? home : '')
  const locale = useLocale()
  const now = useNow()
  const words =
    state === null
      ? []
      : no.conditions.map((condition) =>
          sentence(condition, state.record, readerOf(state, locale, now)),
        )
  return (
    <Notice mark="refused" no>
      {words.length === 0 && no.issues.length === 0 && <p>{no.message}</p>}
      {words.map(({ fact, detail, who }) => (
        <p key={fact}>
          <b>{fact}.</b> {detail} {who}
        </p>
      ))}
      {no.issues.map((issue) => (
        <p key={`${issue.field} ${issue.message}`}>
          {issue.field === '' ? '' : `${issue.field}: `}
          {issue.message}
        </p>
      ))}
      <p>Nothing was changed.</p>
    </Notice>
  )
}

/** A project as this tab or this phone holds it, else as the server gives it; null where none of them has it. */
function useProjectAtHand(id: string): ProjectState | null {
  const live = useLive()
  const [state, setState] = useState<ProjectState | null>(
    () => live.query.getQueryData<ProjectState>(projectKey(id)) ?? null,
  )
  useEffect(() => {
    if (state !== null || !id.startsWith('prj_')) return
    let here = true
    void fetchOrKept(id).then((view) => {
      if (here && view !== null) setState(projectStateOf(view))
    })
    return () => {
      here = false
    }
  }, [state, id])
  return state
}

async function fetchOrKept(id: string): Promise<ProjectView | null> {
  const got = await getProject(id)
  if (got.ok) return got.data
  try {
    const phone = await openPhoneStore()
    const kept = await phone.get('views', id)
    phone.close()
    return kept?.kind === 'project' ? kept.view : null
  } catch {
    return null
  }
}
