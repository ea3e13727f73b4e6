import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/set-up/library')

export default function LibraryPage(props: PageProps) {
  return screenPage('/p/[project]/set-up/library', props)
}
