'use client'
import { createContext, type ReactNode, use } from 'react'
import { Head } from '@/app/_ui/paper.tsx'

const ShownBy = createContext<'day' | 'night'>('day')
/** By which light this is shown: what stands twice on the page needs two names. */
export const useShownBy = () => use(ShownBy)

/** A group of parts, by day (card) and by night (booth). */
export function Both({
  id,
  title,
  children,
}: {
  readonly id: string
  readonly title: string
  readonly children: ReactNode
}) {
  return (
    <section id={id} className="stack tight" aria-label={title}>
      <Head title={title} />
      {(['card', 'booth'] as const).map((theme) => (
        <div key={theme} data-theme={theme} className="both" data-part={`${id}-${theme}`}>
          <ShownBy value={theme === 'card' ? 'day' : 'night'}>{children}</ShownBy>
        </div>
      ))}
    </section>
  )
}

/** One part in one state, with its name. */
export function State({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return (
    <div className="stack tight">
      <p className="small soft">{name}</p>
      {children}
    </div>
  )
}
