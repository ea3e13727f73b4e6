'use client'
import { type ReactNode, useEffect } from 'react'
import { Gone } from '@/app/_ui/gone.tsx'
import { ShopPhoneDesk } from '@/app/_ui/shop-phone/shop-phone-desk.tsx'
import { ToastProvider } from '@/app/_ui/toast.tsx'
import { ShopShell } from '@/app/shops/[shop]/shop-shell.tsx'
import type { ShopView } from '@/lib/command/wire.ts'
import { LiveProvider, type Setting } from '@/lib/live/live-provider.tsx'
import { phoneIsOf } from '@/lib/live/phone/whose-phone.ts'
import { ShopProvider } from '@/lib/live/shop-provider.tsx'
import { NOBODY } from '@/lib/record/ids.ts'
import type { Late } from '@/lib/server/for-pages.ts'
import { lateShop } from './late.ts'

/** A shop's book, and the shell around each of its screens. */
export function WholeShop({
  locale,
  now,
  view,
  children,
}: Setting & { readonly view: ShopView; readonly children: ReactNode }) {
  useEffect(() => phoneIsOf(view.person), [view.person])
  return (
    <LiveProvider locale={locale} now={now}>
      <ToastProvider>
        <ShopPhoneDesk on={view.person === NOBODY} />
        <ShopProvider initial={view} gone={<Gone what="shop" />}>
          <ShopShell>{children}</ShopShell>
        </ShopProvider>
      </ToastProvider>
    </LiveProvider>
  )
}

/** The same on a page of the server's, which does not carry what it is made of. */
export function ServedShop({
  late,
  ...rest
}: Setting & { readonly late: Late; readonly children: ReactNode }) {
  return <WholeShop {...rest} view={lateShop.use(late)} />
}
