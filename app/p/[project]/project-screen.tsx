'use client'
import { useProject } from '@/lib/live/project-provider.tsx'
import { OwnersCar } from './owners-car.tsx'
import { ShopsProject } from './shops-project.tsx'

/** The first screen of a project: the owner's car, or what a shop has to do in it. */
export function ProjectScreen() {
  const { reader } = useProject()
  return reader.view.role === 'owner' ? <OwnersCar /> : <ShopsProject />
}
