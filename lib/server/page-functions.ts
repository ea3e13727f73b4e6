import type { ProjectView, ShopView } from '../command/wire.ts'
import type { DaySheetSource } from '../command/wire-access.ts'
import { Instant } from '../record/scalars.ts'
import { openAside } from './aside.ts'
import type { Doors } from './doors.ts'
import type { ForPages } from './for-pages.ts'
import type { Looker } from './lane/actor.ts'
import { lookerOf } from './people/looker.ts'
import { meOf } from './people/me.ts'
import { SESSION_SECONDS } from './people/session.ts'
import { journalPage } from './views/journal-view.ts'

/** What pages may ask of the running server: the same as over the API. */
export function pageFunctions(doors: Doors): ForPages {
  const { prisma, reading, views, signIn, secret, secure } = doors
  const projects = openAside<ProjectView>()
  const shops = openAside<ShopView>()
  const daySheets = openAside<DaySheetSource>()
  const asLooker = async <T>(
    cookie: string | null,
    ask: (who: Looker) => Promise<T | null>,
  ): Promise<T | null> => {
    const looker = await lookerOf(cookie, doors)
    return looker === null ? null : ask(looker)
  }
  return {
    version: doors.version,
    partsPage: doors.env.partsPage,
    auth: {
      secret,
      secure,
      maxAgeSeconds: SESSION_SECONDS,
      byPassword: signIn.byPassword,
      byLink: signIn.byLink,
      asDemo: signIn.asDemo,
    },
    installation: doors.installation,
    async demonstration() {
      const { state } = await doors.demonstration.progress()
      return state === 'loaded' ? { doors: doors.demoDoors } : null
    },
    async me(cookie) {
      const looker = await lookerOf(cookie, doors)
      return looker === null ? null : meOf(prisma, reading, looker)
    },
    project: async (cookie, id) =>
      projects.late(await asLooker(cookie, (who) => views.project(who, id)), `/api/projects/${id}`),
    shop: async (cookie, id) =>
      shops.late(await asLooker(cookie, (who) => views.shop(who, id)), `/api/shops/${id}`),
    daySheet: async (cookie, id) =>
      daySheets.late(
        await asLooker(cookie, (who) => views.daySheet(who, id)),
        `/api/shops/${id}/day-sheet`,
      ),
    aside: { project: projects.of, shop: shops.of, daySheet: daySheets.of },
    journal: (cookie, id, filter) => asLooker(cookie, (who) => journalPage(doors, who, id, filter)),
    async asOf(cookie, id, at) {
      const moment = Instant.safeParse(at)
      if (!moment.success) return null
      return asLooker(cookie, (who) => views.asOf(who, id, moment.data))
    },
    phoneLink: (token) => doors.phoneLinks.read(token),
    joining: (token) => doors.invitations.read(token),
    receipt: (token) => doors.receipts.read(token),
  }
}
