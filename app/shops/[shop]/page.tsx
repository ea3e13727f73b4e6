import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'
import { cookieHeader } from '@/app/_ui/door/cookie.ts'
import { forPages } from '@/lib/server/for-pages.ts'

export const metadata = screenMetadata('/shops/[shop]')

export default function DaySheetPage(props: PageProps) {
  return screenPage('/shops/[shop]', props, async ({ shop }) => {
    const late = await forPages().daySheet(await cookieHeader(), shop ?? '')
    // Without a right to it the layout has said so already.
    return late === null ? null : { kind: 'day sheet', late }
  })
}
