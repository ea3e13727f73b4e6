import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/windows')

export default function WindowsPage(props: PageProps) {
  return screenPage('/p/[project]/windows', props)
}
