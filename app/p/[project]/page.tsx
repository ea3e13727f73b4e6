import type { Metadata } from 'next'
import { ProjectScreen } from './project-screen.tsx'

export const metadata: Metadata = { title: 'Project · Fettleyard' }

export default function ProjectPage() {
  return <ProjectScreen />
}
