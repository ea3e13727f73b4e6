import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/shops/[shop]/people')

export default function ShopPeoplePage(props: PageProps) {
  return screenPage('/shops/[shop]/people', props)
}
