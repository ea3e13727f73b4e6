import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/decisions/new')

export default function NewDecisionPage(props: PageProps) {
  return screenPage('/p/[project]/decisions/new', props)
}
