'use client'
import Link from 'next/link'
import { Sheet } from '@/app/_ui/paper.tsx'
import { projectPath } from '@/app/_ui/paths.ts'
import { useProject } from '@/lib/live/project-provider.tsx'

/** The other screens of a project, which the rail has no room for. */
export function Places({ project, owner }: { readonly project: string; readonly owner?: boolean }) {
  const { reader } = useProject()
  const money = reader.view.role === 'owner' || reader.view.role === 'manager'
  const works = reader.view.role === 'manager' || reader.view.role === 'hand'
  const places = [
    ...(owner === true || !works ? [] : [{ screen: 'change-orders', label: 'Change orders' }]),
    { screen: 'decisions', label: 'Decisions' },
    { screen: 'handovers', label: 'Handovers' },
    { screen: 'parts', label: 'Parts' },
    { screen: 'coating', label: 'Coating record' },
    { screen: 'windows', label: 'Slots and windows' },
    ...(money ? [{ screen: 'account', label: 'Account' }] : []),
    { screen: 'people', label: 'People' },
    ...(owner === true || !works ? [] : [{ screen: 'set-up', label: 'Project set-up' }]),
  ]
  return (
    <Sheet title="More of it">
      <ul className="ruled">
        {places.map(({ screen, label }) => (
          <li key={screen}>
            <Link prefetch={false} className="row-link" href={projectPath(project, screen)}>
              {label}
            </Link>
          </li>
        ))}
      </ul>
    </Sheet>
  )
}
