import type { Metadata, Viewport } from 'next'
import { connection } from 'next/server'
import type { ReactNode } from 'react'
import { DemoStrip } from '@/app/_ui/demo-strip.tsx'
import { AfterLoad } from '@/app/_ui/install/after-load.tsx'
import { stencilFace, textFace, textFaceBeyond } from '@/app/_ui/theme/faces.ts'
import { wornTheme } from '@/app/_ui/theme/worn-theme.ts'
import { forPages } from '@/lib/server/for-pages.ts'
import './globals.css'

export const metadata: Metadata = {
  title: 'Fettleyard',
  description: 'One car, several shops, one record.',
}

export const viewport: Viewport = {
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: '#c3c7c6' },
    { media: '(prefers-color-scheme: dark)', color: '#0e1112' },
  ],
}

export default async function RootLayout({ children }: { readonly children: ReactNode }) {
  // A prerendered page has no nonce on its scripts, and the content policy would block them.
  await connection()
  const demonstration = await forPages().demonstration()
  return (
    <html
      lang="en-GB"
      data-theme={await wornTheme()}
      className={`${textFace.variable} ${textFaceBeyond.variable} ${stencilFace.variable}`}
    >
      <body>
        {demonstration !== null && <DemoStrip doors={demonstration.doors} />}
        {children}
        <AfterLoad />
      </body>
    </html>
  )
}
