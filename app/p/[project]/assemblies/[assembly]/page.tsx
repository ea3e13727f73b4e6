import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/assemblies/[assembly]')

export default function AssemblyPage(props: PageProps) {
  return screenPage('/p/[project]/assemblies/[assembly]', props)
}
