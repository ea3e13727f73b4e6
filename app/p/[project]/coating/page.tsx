import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/coating')

export default function CoatingPage(props: PageProps) {
  return screenPage('/p/[project]/coating', props)
}
