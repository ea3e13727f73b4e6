'use client'
import { useEffect, useMemo, useState } from 'react'
import { useLive } from '@/lib/live/live-provider.tsx'
import { keptFor } from '@/lib/live/phone/kept-views.ts'
import { openPhoneStore } from '@/lib/live/phone/phone-store.ts'
import { useProjectIfAny } from '@/lib/live/project-provider.tsx'
import { type ProjectState, projectStateOf } from '@/lib/live/project-state.ts'
import { useShopIfAny } from '@/lib/live/shop-provider.tsx'
import type { ShopState } from '@/lib/live/shop-state.ts'
import type { PersonId } from '@/lib/record/ids.ts'
import type { PlaceToGo } from './nearest.ts'
import { placesElsewhere, placesInProject, placesInShop } from './places-to-go.ts'

/** Everywhere this person can go: the car or shop of this screen first, then all that this tab and this phone hold of theirs. */
export function usePlaces(): readonly PlaceToGo[] {
  const live = useLive()
  const project = useProjectIfAny()
  const shop = useShopIfAny()
  const here = project?.record.id
  const person = project?.person ?? shop?.person
  const [kept, setKept] = useState<readonly ProjectState[]>([])
  useEffect(() => {
    let stays = true
    void keptProjects(person)
      .then((found) => {
        if (stays) setKept(found)
      })
      // A browser that keeps nothing has what this tab holds.
      .catch(() => undefined)
    return () => {
      stays = false
    }
  }, [person])
  return useMemo(() => {
    const cached = live.query
      .getQueriesData<ProjectState | null>({ queryKey: ['project'] })
      .flatMap(([, state]) => state ?? [])
    const shops = live.query
      .getQueriesData<ShopState | null>({ queryKey: ['shop'] })
      .flatMap(([, state]) => state ?? [])
    const held = new Set(cached.map(({ record }) => record.id))
    const projects = [...cached, ...kept.filter(({ record }) => !held.has(record.id))].toSorted(
      (a, b) => Number(b.record.id === here) - Number(a.record.id === here),
    )
    return [
      ...shops.flatMap(placesInShop),
      ...projects.flatMap(placesInProject),
      ...placesElsewhere,
    ]
  }, [live, here, kept])
}

async function keptProjects(person: PersonId | undefined): Promise<readonly ProjectState[]> {
  const store = await openPhoneStore()
  try {
    const views = person === undefined ? [] : await keptFor(store, person)
    return views.flatMap((kept) => (kept.kind === 'project' ? [projectStateOf(kept.view)] : []))
  } finally {
    store.close()
  }
}
