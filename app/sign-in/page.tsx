import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { cookieHeader } from '@/app/_ui/door/cookie.ts'
import { wayOn } from '@/app/_ui/door/way-on.ts'
import { PhoneAccount } from '@/app/account/phone-account.tsx'
import { forPages } from '@/lib/server/for-pages.ts'
import { DemoDoors } from './demo-doors.tsx'
import { DemoPhone } from './demo-phone.tsx'
import { MailLink } from './mail-link.tsx'
import { SignInForm } from './sign-in-form.tsx'
import { UnsentHere } from './unsent-here.tsx'

export const metadata: Metadata = { title: 'Sign in · Fettleyard' }

export default async function SignInPage({
  searchParams,
}: {
  readonly searchParams: Promise<{ readonly [name: string]: string | string[] | undefined }>
}) {
  const { next, again } = await searchParams
  const installation = await forPages().installation()
  if (installation.empty) redirect('/set-up')
  const way = wayOn(next)
  const me = await forPages().me(await cookieHeader())
  if (again === undefined && me !== null) redirect(way)
  const phone = me?.device ?? null
  return (
    <main className="page stack">
      <header className="plate">
        <div>
          <h1>Fettleyard</h1>
          <p>One car, several shops, one record</p>
        </div>
      </header>
      <UnsentHere />
      {installation.demoPersons.length > 0 && (
        <DemoDoors
          persons={installation.demoPersons}
          way={way}
          leaves={me?.demo === true && phone !== null}
        />
      )}
      {installation.demoPhone !== null && <DemoPhone phone={installation.demoPhone} />}
      {phone !== null && me !== null && <PhoneAccount name={phone.name} demo={me.demo} />}
      <div className="cols cols-2">
        {phone === null && <SignInForm way={way} />}
        <div className="stack">
          {installation.mail && <MailLink way={way} />}
          <section className="sheet stack tight">
            <div className="head">
              <h2>No password yet?</h2>
            </div>
            <p>
              Whoever invited you has a link for you, on paper, in a message or as a square to
              photograph. Open it: it lets you choose a password.
            </p>
          </section>
        </div>
      </div>
    </main>
  )
}
