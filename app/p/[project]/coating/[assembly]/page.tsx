import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/p/[project]/coating/[assembly]')

export default function StackPage(props: PageProps) {
  return screenPage('/p/[project]/coating/[assembly]', props)
}
