import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/set-up/import')

export default function ImportPage(props: PageProps) {
  return screenPage('/p/[project]/set-up/import', props)
}
