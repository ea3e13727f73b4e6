import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/change-orders/new')

export default function NewChangeOrderPage(props: PageProps) {
  return screenPage('/p/[project]/change-orders/new', props)
}
