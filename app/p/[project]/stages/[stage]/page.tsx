import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/stages/[stage]')

export default function StagePage(props: PageProps) {
  return screenPage('/p/[project]/stages/[stage]', props)
}
