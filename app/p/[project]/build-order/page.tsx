import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/build-order')

export default function BuildOrderPage(props: PageProps) {
  return screenPage('/p/[project]/build-order', props)
}
