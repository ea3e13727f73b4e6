import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/colours/[colour]')

export default function ColourPage(props: PageProps) {
  return screenPage('/p/[project]/colours/[colour]', props)
}
