'use client'
import { useEffect } from 'react'

/** Asks for the page again as soon as the phone has a network: without one it can't be shown. */
export function useReloadWhenBack(): void {
  useEffect(() => {
    const again = () => window.location.reload()
    addEventListener('online', again)
    return () => removeEventListener('online', again)
  }, [])
}
