import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/decisions/[decision]')

export default function DecisionPage(props: PageProps) {
  return screenPage('/p/[project]/decisions/[decision]', props)
}
