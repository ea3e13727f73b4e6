import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/change-orders')

export default function ChangeOrdersPage(props: PageProps) {
  return screenPage('/p/[project]/change-orders', props)
}
