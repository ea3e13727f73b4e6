'use client'
import type { ReactNode } from 'react'
import { ShopPhoneDesk } from '@/app/_ui/shop-phone/shop-phone-desk.tsx'
import { ToastProvider } from '@/app/_ui/toast.tsx'
import { LiveProvider, type Setting } from '@/lib/live/live-provider.tsx'

/** What a press needs where there is no project and no shop yet. */
export function Alone({ locale, now, children }: Setting & { readonly children: ReactNode }) {
  return (
    <LiveProvider locale={locale} now={now}>
      <ToastProvider>
        <ShopPhoneDesk on={null} />
        {children}
      </ToastProvider>
    </LiveProvider>
  )
}
