import { redirect } from 'next/navigation'
import { cookieHeader } from '@/app/_ui/door/cookie.ts'
import { onlyPlaceOf } from '@/app/_ui/door/only-place.ts'
import { forPages } from '@/lib/server/for-pages.ts'

/**
 * One address for everybody, as a shortcut on a phone needs it: whose shop it is, to its day sheet; whose car, to the car; who has
 * several chooses.
 */
export default async function DaySheet() {
  const me = await forPages().me(await cookieHeader())
  if (me === null) redirect('/sign-in?next=/day-sheet')
  redirect(onlyPlaceOf(me) ?? '/')
}
