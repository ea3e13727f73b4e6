import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/shops/[shop]/set-up')

export default function ShopSetUpPage(props: PageProps) {
  return screenPage('/shops/[shop]/set-up', props)
}
