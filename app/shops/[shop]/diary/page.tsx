import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/shops/[shop]/diary')

export default function DiaryPage(props: PageProps) {
  return screenPage('/shops/[shop]/diary', props)
}
