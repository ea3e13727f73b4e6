import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { cookieHeader } from '@/app/_ui/door/cookie.ts'
import { forPages } from '@/lib/server/for-pages.ts'
import { AccountDesk } from './account-desk.tsx'
import { PhoneAccount } from './phone-account.tsx'

export const metadata: Metadata = { title: 'Your account · Fettleyard' }

export default async function AccountPage() {
  const me = await forPages().me(await cookieHeader())
  if (me === null) redirect('/sign-in?next=/account')
  return (
    <main className="page stack">
      <header className="plate">
        <div>
          <h1>{me.person.name}</h1>
          <p>{me.device === null ? me.person.email : 'A phone of the shop'}</p>
        </div>
      </header>
      {me.device === null ? (
        <AccountDesk me={me} />
      ) : (
        <PhoneAccount name={me.device.name} demo={me.demo} />
      )}
    </main>
  )
}
