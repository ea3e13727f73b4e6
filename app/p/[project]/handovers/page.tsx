import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/handovers')

export default function HandoversPage(props: PageProps) {
  return screenPage('/p/[project]/handovers', props)
}
