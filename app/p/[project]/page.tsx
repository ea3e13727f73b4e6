import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]')

export default function ProjectPage(props: PageProps) {
  return screenPage('/p/[project]', props)
}
