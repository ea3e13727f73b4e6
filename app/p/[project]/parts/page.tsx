import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/parts')

export default function PartsPage(props: PageProps) {
  return screenPage('/p/[project]/parts', props)
}
