'use client'
import { usePathname } from 'next/navigation'

/** Says on every page that this is the demonstration, and how to change places or end it. */
export function DemoStrip({ doors }: { readonly doors: boolean }) {
  const path = usePathname()
  // The entrance says it at length.
  if (path === '/sign-in' || path === '/set-up') return null
  return (
    <aside className="demo-strip" aria-label="The demonstration">
      <b>Demonstration</b>
      {doors && <a href="/sign-in?again=1">Sign in as somebody else</a>}
      <a href="/account#end-demonstration">End it</a>
    </aside>
  )
}
