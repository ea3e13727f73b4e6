import { redirect } from 'next/navigation'
import type { ReactNode } from 'react'
import { ShopFrame } from '@/app/_screen/frames.tsx'
import { askedPath } from '@/app/_ui/door/asked-path.ts'
import { cookieHeader } from '@/app/_ui/door/cookie.ts'
import { Gone } from '@/app/_ui/gone.tsx'
import { readerLocale } from '@/app/_ui/reader-locale.ts'
import { forPages } from '@/lib/server/for-pages.ts'

/** All screens of a shop: its book comes once, with the first of them; from then on it lives. */
export default async function ShopLayout({
  params,
  children,
}: {
  readonly params: Promise<{ readonly shop: string }>
  readonly children: ReactNode
}) {
  const { shop } = await params
  const cookie = await cookieHeader()
  const late = await forPages().shop(cookie, shop)
  if (late === null) {
    const me = await forPages().me(cookie)
    if (me === null) redirect(`/sign-in?next=${encodeURIComponent(await askedPath())}`)
    return <Gone what="shop" />
  }
  return (
    <ShopFrame locale={await readerLocale()} now={new Date().toISOString()} late={late}>
      {children}
    </ShopFrame>
  )
}
