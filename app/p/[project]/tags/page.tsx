import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/tags')

export default function TagsPage(props: PageProps) {
  return screenPage('/p/[project]/tags', props)
}
