'use client'
import { Mark } from '@/app/_ui/mark.tsx'
import { useProject } from '@/lib/live/project-provider.tsx'

/** Beside what stands so only on this phone: the server has not heard of it yet. */
export function UnsentMark({ entity }: { readonly entity: string }) {
  const { unsent } = useProject()
  if (!unsent.has(entity)) return null
  return (
    <p className="small rowmark unsent-mark">
      <Mark name="unsent" />
      <b>Not sent yet</b>
    </p>
  )
}
