import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/parts/new')

export default function NewPartPage(props: PageProps) {
  return screenPage('/p/[project]/parts/new', props)
}
