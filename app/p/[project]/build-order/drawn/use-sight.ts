'use client'
import { type RefObject, useCallback, useEffect, useLayoutEffect, useRef } from 'react'
import { DAY_PX, type Wall } from '@/lib/plan/drawn/wall.ts'

/** How much of what can be seen lies before today. */
const BEFORE = 0.2

/**
 * Keeps in sight what was: today at first; when it comes nearer or goes further, the card that the keys are at, else today, else the
 * middle, each at its place on the screen. `held` is that card's day. Gives the way back to today.
 */
export function useSight(
  region: RefObject<HTMLDivElement | null>,
  wall: Wall,
  held: number | null,
): () => void {
  const seen = useRef<{ readonly zoom: Wall['zoom']; left: number } | null>(null)
  const { today, zoom } = wall

  const toToday = useCallback(() => {
    const at = region.current
    if (at !== null) at.scrollLeft = today * pxOf() - widthOf(at) * BEFORE
  }, [region, today])

  // The browser cuts the way along short as soon as the wall is: so how far it was is noted before.
  useEffect(() => {
    const at = region.current
    const note = () => {
      if (at !== null && seen.current !== null) seen.current.left = at.scrollLeft
    }
    at?.addEventListener('scroll', note, { passive: true })
    return () => at?.removeEventListener('scroll', note)
  }, [region])

  useLayoutEffect(() => {
    const at = region.current
    const was = seen.current
    if (at === null || was?.zoom === zoom) return
    if (was === null) toToday()
    else {
      const width = widthOf(at)
      const placeOf = (day: number) => day * DAY_PX[was.zoom] * pxOf() - was.left
      const days = [held, today / DAY_PX[zoom]].flatMap((day) => day ?? [])
      const inSight = days.find((day) => placeOf(day) >= 0 && placeOf(day) <= width)
      const day = inSight ?? (was.left + width / 2) / (DAY_PX[was.zoom] * pxOf())
      at.scrollLeft = day * DAY_PX[zoom] * pxOf() - placeOf(day)
    }
    seen.current = { zoom, left: at.scrollLeft }
  }, [region, zoom, today, held, toToday])
  return toToday
}

/** How wide a px of the wall is, whose letters may be larger. */
const pxOf = (): number =>
  Number.parseFloat(getComputedStyle(document.documentElement).fontSize) / 16

/** Width of the days in sight, beside the names of the lanes. */
const widthOf = (region: HTMLElement): number =>
  region.clientWidth - (region.querySelector('.drawn-corner')?.clientWidth ?? 0)
