import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/parts/[part]')

export default function PartPage(props: PageProps) {
  return screenPage('/p/[project]/parts/[part]', props)
}
