import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/handovers/[handover]')

export default function HandoverPage(props: PageProps) {
  return screenPage('/p/[project]/handovers/[handover]', props)
}
