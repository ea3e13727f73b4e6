import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/account')

export default function AccountPage(props: PageProps) {
  return screenPage('/p/[project]/account', props)
}
