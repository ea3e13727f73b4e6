import Link from 'next/link'
import { redirect } from 'next/navigation'
import { cookieHeader } from '@/app/_ui/door/cookie.ts'
import { onlyPlaceOf } from '@/app/_ui/door/only-place.ts'
import { EmptyState, Head, Plate } from '@/app/_ui/paper.tsx'
import { projectPath, shopPath } from '@/app/_ui/paths.ts'
import { forPages } from '@/lib/server/for-pages.ts'

/**
 * Where somebody who is signed in belongs: their shops with their day sheets, their projects.
 * Who comes in (`?in`) and has one place only is led there.
 */
export default async function FirstPage({
  searchParams,
}: {
  readonly searchParams: Promise<{ readonly in?: string }>
}) {
  const me = await forPages().me(await cookieHeader())
  if (me === null) {
    const { empty } = await forPages().installation()
    redirect(empty ? '/set-up' : '/sign-in')
  }
  const only = (await searchParams).in === undefined ? undefined : onlyPlaceOf(me)
  if (only !== undefined) redirect(only)
  const manages = me.shops.find(({ role }) => role === 'manager')
  return (
    <main className="page stack">
      <Plate title="Fettleyard" under="One car, several shops, one record">
        <b>{me.person.name}</b>
      </Plate>
      <div className="cols cols-2">
        {me.shops.length > 0 && (
          <section className="stack tight">
            <Head title="Shops" note={me.shops.length} />
            <ul className="stack tight">
              {me.shops.map((shop) => (
                <li key={shop.id}>
                  <Link className="line line-two" href={shopPath(shop.id)}>
                    <span>
                      <b className="big">{shop.name}</b>
                      <br />
                      <span className="small">Day sheet · you are {shop.role} here</span>
                    </span>
                  </Link>
                </li>
              ))}
            </ul>
          </section>
        )}
        <section className="stack tight">
          <Head title="Projects" note={me.projects.length} />
          {me.projects.length === 0 && (
            <EmptyState title="No project yet">
              <p>A project stands here as soon as you or your shop take part in one.</p>
            </EmptyState>
          )}
          <ul className="stack tight">
            {me.projects.map((project) => (
              <li key={project.id}>
                <Link className="line line-two" href={projectPath(project.id)}>
                  <span>
                    <b className="big">{project.name}</b>
                    <br />
                    <span className="small">
                      {project.partyName}
                      {project.lead ? ', lead' : ''}
                      {project.partyRole === 'owner' ? ', owner' : ''}
                    </span>
                  </span>
                </Link>
              </li>
            ))}
          </ul>
          {manages !== undefined && (
            <p>
              <Link className="btn btn-line btn-wide" href={`/projects/new?shop=${manages.id}`}>
                Begin a project
              </Link>
            </p>
          )}
        </section>
      </div>
      <p className="way">
        <Link href="/account">Your account and signing out</Link>
      </p>
    </main>
  )
}
