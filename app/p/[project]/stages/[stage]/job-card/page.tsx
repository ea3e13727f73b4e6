import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/stages/[stage]/job-card')

export default function JobCardPage(props: PageProps) {
  return screenPage('/p/[project]/stages/[stage]/job-card', props)
}
