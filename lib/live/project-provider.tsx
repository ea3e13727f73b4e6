'use client'
import { useQueries, useQuery } from '@tanstack/react-query'
import { createContext, type ReactNode, use, useEffect, useMemo } from 'react'
import type { ProjectView } from '../command/wire.ts'
import type { Reader } from '../words/reader.ts'
import { useLive, useLocale, useNow } from './live-provider.tsx'
import type { Overlaid } from './outbox/overlay.ts'
import { useOutboxView } from './outbox/use-outbox.ts'
import { type ProjectState, projectStateOf } from './project-state.ts'
import { projectKey } from './record-keys.ts'
import { readerOn, type ShopPhone } from './shop-phone/shop-phone.ts'
import { useShopPhone } from './shop-phone/use-shop-phone.ts'

/** A project on a screen: what is held of it with what was pressed and isn't sent, and for whom words are made. */
export interface ProjectHere extends ProjectState {
  readonly reader: Reader
  /** Entities that stand so only by what isn't sent yet. */
  readonly unsent: ReadonlySet<string>
}

const nothing: ReadonlySet<string> = new Set()

const ProjectContext = createContext<ProjectHere | null>(null)

/** The reader of a project's words. */
export function readerOf(state: ProjectState, locale: string, now: Reader['now']): Reader {
  const project = state.record.projects.rows.get(state.record.id)
  return {
    view: state.view,
    person: state.person,
    people: state.people,
    locale,
    timeZone: project?.timeZone ?? 'UTC',
    currency: project?.currency ?? 'GBP',
    now,
  }
}

function hereOf(
  { state, unsent }: Overlaid<ProjectState>,
  phone: ShopPhone,
  locale: string,
  now: Reader['now'],
): ProjectHere {
  // On a shop's phone whoever works at it reads.
  const read = { ...state, person: readerOn(phone, state.person) }
  return { ...read, unsent, reader: readerOf(read, locale, now) }
}

/**
 * Holds a project for the screens in it: from the page at first, then as changes come in. `gone` is shown when it may no longer be
 * seen.
 */
export function ProjectProvider({
  initial,
  gone,
  children,
}: {
  readonly initial: ProjectView
  readonly gone: ReactNode
  readonly children: ReactNode
}) {
  const live = useLive()
  const locale = useLocale()
  const now = useNow()
  const { data: state } = useQuery<ProjectState | null>({
    queryKey: projectKey(initial.record),
    queryFn: () => projectStateOf(initial),
    initialData: () => projectStateOf(initial),
  })
  useEffect(() => live.seedProject(initial), [live, initial])
  useEffect(() => live.watch(initial.record), [live, initial.record])
  const { project: overlaid } = useOutboxView()
  const phone = useShopPhone()
  const here = useMemo<ProjectHere | null>(
    () => (state === null ? null : hereOf(overlaid(state), phone, locale, now)),
    [state, overlaid, phone, locale, now],
  )
  if (here === null) return gone
  return <ProjectContext value={here}>{children}</ProjectContext>
}

/** A record that stands still, as it was on a day: its screens are the same, but nothing moves in it. */
export function StillProject({
  view,
  children,
}: {
  readonly view: ProjectView
  readonly children: ReactNode
}) {
  const locale = useLocale()
  const here = useMemo<ProjectHere>(() => {
    const state = projectStateOf(view)
    return { ...state, unsent: nothing, reader: readerOf(state, locale, view.now) }
  }, [view, locale])
  return <ProjectContext value={here}>{children}</ProjectContext>
}

/** One of several projects on a screen, for what stands in it. */
export const ProjectScope = ({
  here,
  children,
}: {
  readonly here: ProjectHere
  readonly children: ReactNode
}) => <ProjectContext value={here}>{children}</ProjectContext>

/** Several projects at once, each live; one that may no longer be seen is left out. */
export function useProjects(initial: readonly ProjectView[]): readonly ProjectHere[] {
  const live = useLive()
  const locale = useLocale()
  const now = useNow()
  const { project: overlaid } = useOutboxView()
  const phone = useShopPhone()
  const results = useQueries({
    queries: initial.map((view) => ({
      queryKey: projectKey(view.record),
      queryFn: (): ProjectState | null => projectStateOf(view),
      initialData: (): ProjectState | null => projectStateOf(view),
    })),
  })
  useEffect(() => {
    for (const view of initial) live.seedProject(view)
    const stops = initial.map((view) => live.watch(view.record))
    return () => {
      for (const stop of stops) stop()
    }
  }, [live, initial])
  return results.flatMap(({ data }) =>
    data === null ? [] : [hereOf(overlaid(data), phone, locale, now)],
  )
}

/** The project that this screen is in. */
export function useProject(): ProjectHere {
  const here = use(ProjectContext)
  if (here === null) throw new Error('A screen stands outside ProjectProvider.')
  return here
}

/** The project that this screen is in, if it is in one. */
export const useProjectIfAny = (): ProjectHere | null => use(ProjectContext)
