import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/people')

export default function PeoplePage(props: PageProps) {
  return screenPage('/p/[project]/people', props)
}
