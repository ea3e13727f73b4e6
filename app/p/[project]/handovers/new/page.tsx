import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/handovers/new')

export default function NewHandoverPage(props: PageProps) {
  return screenPage('/p/[project]/handovers/new', props)
}
