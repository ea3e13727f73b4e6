import type { PersonId } from '../record/ids.ts'
import { Instant } from '../record/scalars.ts'
import type { Doors } from './doors.ts'
import type { ForPages } from './for-pages.ts'
import { readInstallation } from './installation/installation.ts'
import { meOf } from './people/me.ts'
import { SESSION_SECONDS } from './people/session.ts'
import { journalPage } from './views/journal-view.ts'

/** What pages may ask of the running server: the same as over the API. */
export function pageFunctions(doors: Doors): ForPages {
  const { prisma, reading, names, sessions, views, signIn, secret, secure } = doors
  const asPerson = async <T>(
    cookie: string | null,
    ask: (person: PersonId) => Promise<T | null>,
  ): Promise<T | null> => {
    const session = await sessions.of(cookie)
    return session === null ? null : ask(session.person)
  }
  return {
    version: doors.version,
    auth: {
      secret,
      secure,
      maxAgeSeconds: SESSION_SECONDS,
      byPassword: signIn.byPassword,
      byLink: signIn.byLink,
      asDemo: signIn.asDemo,
    },
    async installation() {
      const { state } = await doors.demonstration.progress()
      const { demoDoors, jobs } = doors
      return readInstallation(prisma, {
        demoDoors,
        loading: state === 'loading',
        mail: jobs !== null,
      })
    },
    async demonstration() {
      const { state } = await doors.demonstration.progress()
      return state === 'loaded' ? { doors: doors.demoDoors } : null
    },
    async me(cookie) {
      const session = await sessions.of(cookie)
      return session === null ? null : meOf(prisma, reading, session)
    },
    projectView: (cookie, id) => asPerson(cookie, (person) => views.project(person, id)),
    shopView: (cookie, id) => asPerson(cookie, (person) => views.shop(person, id)),
    daySheet: (cookie, id) => asPerson(cookie, (person) => views.daySheet(person, id)),
    journal: (cookie, id, filter) =>
      asPerson(cookie, (person) => journalPage(prisma, reading, names, person, id, filter)),
    async asOf(cookie, id, at) {
      const moment = Instant.safeParse(at)
      if (!moment.success) return null
      return asPerson(cookie, (person) => views.asOf(person, id, moment.data))
    },
    joining: (token) => doors.invitations.read(token),
    receipt: (token) => doors.receipts.read(token),
  }
}
