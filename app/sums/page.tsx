import { redirect } from 'next/navigation'
import { AloneFrame } from '@/app/_screen/frames.tsx'
import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'
import { cookieHeader } from '@/app/_ui/door/cookie.ts'
import { readerLocale } from '@/app/_ui/reader-locale.ts'
import { forPages } from '@/lib/server/for-pages.ts'

export const metadata = screenMetadata('/sums')

/** The sums of the bench. They lie in no record, and need no network once the phone has them. */
export default async function SumsPage(props: PageProps) {
  if ((await forPages().me(await cookieHeader())) === null) redirect('/sign-in?next=/sums')
  return (
    <AloneFrame locale={await readerLocale()} now={new Date().toISOString()}>
      {await screenPage('/sums', props)}
    </AloneFrame>
  )
}
