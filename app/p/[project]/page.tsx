import { ProjectScreen } from './project-screen.tsx'

export default function ProjectPage() {
  return <ProjectScreen />
}
