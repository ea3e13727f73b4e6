import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/decisions')

export default function DecisionsPage(props: PageProps) {
  return screenPage('/p/[project]/decisions', props)
}
