import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/change-orders/[order]')

export default function ChangeOrderPage(props: PageProps) {
  return screenPage('/p/[project]/change-orders/[order]', props)
}
