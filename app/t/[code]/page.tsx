import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/t/[code]')

/** Where a tag's QR code leads: its assembly opens, also for who came by the phone's own camera. */
export default function Tag(props: PageProps) {
  return screenPage('/t/[code]', props)
}
