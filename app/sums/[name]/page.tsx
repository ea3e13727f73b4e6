import { redirect } from 'next/navigation'
import { AloneFrame } from '@/app/_screen/frames.tsx'
import { type PageProps, screenMetadata, screenPage } from '@/app/_screen/screen-page.tsx'
import { cookieHeader } from '@/app/_ui/door/cookie.ts'
import { readerLocale } from '@/app/_ui/reader-locale.ts'
import { forPages } from '@/lib/server/for-pages.ts'

export const metadata = screenMetadata('/sums/[name]')

/** One sum of the bench. */
export default async function SumPage(props: PageProps) {
  const { name } = await props.params
  if ((await forPages().me(await cookieHeader())) === null)
    redirect(`/sign-in?next=${encodeURIComponent(`/sums/${String(name)}`)}`)
  return (
    <AloneFrame locale={await readerLocale()} now={new Date().toISOString()}>
      {await screenPage('/sums/[name]', props)}
    </AloneFrame>
  )
}
