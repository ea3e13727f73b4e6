import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/set-up')

export default function ProjectSetUpPage(props: PageProps) {
  return screenPage('/p/[project]/set-up', props)
}
