import { redirect } from 'next/navigation'
import type { ReactNode } from 'react'
import { askedPath } from '@/app/_ui/door/asked-path.ts'
import { cookieHeader } from '@/app/_ui/door/cookie.ts'
import { Gone } from '@/app/_ui/gone.tsx'
import { ShopProvider } from '@/lib/live/shop-provider.tsx'
import { forPages } from '@/lib/server/for-pages.ts'
import { ShopShell } from './shop-shell.tsx'

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
  const view = await forPages().shopView(cookie, shop)
  if (view === null) {
    const me = await forPages().me(cookie)
    if (me === null) redirect(`/sign-in?next=${encodeURIComponent(await askedPath())}`)
    return <Gone what="shop" />
  }
  return (
    <ShopProvider initial={view} gone={<Gone what="shop" />}>
      <ShopShell>{children}</ShopShell>
    </ShopProvider>
  )
}
