import type { ReactNode } from 'react'
import { Head } from '@/app/_ui/paper.tsx'

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
          {children}
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
