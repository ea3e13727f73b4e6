'use client'
import { useEffect } from 'react'
import { isServing } from '@/lib/live/http.ts'

/** How often the server is looked for, in ms: a phone with one bar, or whose server stopped, hears of no return. */
const LOOK_MS = 4_000

/** Asks for the page again as soon as the server can be reached: without it the page can't be shown. */
export function useReloadWhenBack(): void {
  useEffect(() => {
    let stays = true
    let looking = false
    const look = async () => {
      if (looking || document.visibilityState !== 'visible') return
      looking = true
      if ((await isServing()) && stays) window.location.reload()
      looking = false
    }
    const timer = setInterval(() => void look(), LOOK_MS)
    const now = () => void look()
    addEventListener('online', now)
    return () => {
      stays = false
      clearInterval(timer)
      removeEventListener('online', now)
    }
  }, [])
}
