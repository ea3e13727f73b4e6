'use client'
import type { ReactNode } from 'react'
import { LiveLine } from '@/app/_ui/live-line.tsx'
import { Plate } from '@/app/_ui/paper.tsx'
import { shopPath } from '@/app/_ui/paths.ts'
import { Rail } from '@/app/_ui/rail.tsx'
import { WhoWorks } from '@/app/_ui/shop-phone/who-works.tsx'
import { useOnShopPhone } from '@/lib/live/shop-phone/use-shop-phone.ts'
import { useShop } from '@/lib/live/shop-provider.tsx'
import { longDay } from '@/lib/words/dates.ts'
import { personName } from '@/lib/words/names.ts'

/** Plate, rail and live line around every screen of a shop. */
export function ShopShell({ children }: { readonly children: ReactNode }) {
  const { book, place, person, people, role } = useShop()
  const shop = book.shops.rows.get(book.id)
  const onPhone = useOnShopPhone(person)
  return (
    <>
      <header>
        <a className="skip" href="#content">
          To the content
        </a>
      </header>
      <Rail
        places={[
          { href: shopPath(book.id), label: 'Day sheet' },
          { href: '/', label: 'Projects' },
          { href: shopPath(book.id, 'diary'), label: 'Diary' },
          { href: shopPath(book.id, 'people'), label: 'People' },
          ...(role === 'manager' ? [{ href: shopPath(book.id, 'set-up'), label: 'Shop' }] : []),
        ]}
      />
      <main className="page stack" id="content">
        <Plate title={shop?.name ?? 'A shop'} under={longDay(place.now, place)}>
          {onPhone ? (
            <WhoWorks />
          ) : (
            <>
              <b>{personName(person, people)}</b>, {role}
            </>
          )}
        </Plate>
        <LiveLine place={place} />
        {children}
      </main>
    </>
  )
}
