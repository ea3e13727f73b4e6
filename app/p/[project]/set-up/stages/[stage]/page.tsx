import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/set-up/stages/[stage]')

export default function StageSetUpPage(props: PageProps) {
  return screenPage('/p/[project]/set-up/stages/[stage]', props)
}
