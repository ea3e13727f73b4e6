'use client'
import { usePathname, useSearchParams } from 'next/navigation'
import { useEffect, useState } from 'react'

/** How long a way may take before it is spoken of, in ms. */
const PATIENCE_MS = 300

/** Whether a link was followed and its screen is still on its way; the old one stands meanwhile. */
export function useOnTheWay(): boolean {
  const here = `${usePathname()}?${useSearchParams()}`
  const [left, setLeft] = useState<string | null>(null)
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined
    const follow = (event: MouseEvent) => {
      const link = event.target instanceof Element ? event.target.closest('a') : null
      const elsewhere = link !== null && `${link.pathname}?${link.search.slice(1)}` !== here
      const plain = !(event.metaKey || event.ctrlKey || event.shiftKey) && event.button === 0
      if (!elsewhere || !plain || link.origin !== location.origin || link.target !== '') return
      clearTimeout(timer)
      timer = setTimeout(() => setLeft(here), PATIENCE_MS)
    }
    addEventListener('click', follow)
    return () => {
      clearTimeout(timer)
      removeEventListener('click', follow)
    }
  }, [here])
  return left === here
}
