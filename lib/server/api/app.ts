import { Hono } from 'hono'
import { bodyLimit } from 'hono/body-limit'
import { openApi } from '../../command/openapi.ts'
import type { Doors } from '../doors.ts'
import { commandRoutes } from './commands.ts'
import { deviceRoutes } from './devices.ts'
import { faultAnswer } from './door.ts'
import { fileRoutes } from './files.ts'
import { guard } from './guard.ts'
import { installationRoutes } from './installation.ts'
import { invitationRoutes } from './invitations.ts'
import { meRoutes } from './me.ts'
import { projectRoutes } from './projects.ts'
import { receiptRoutes } from './receipts.ts'
import { shopRoutes } from './shops.ts'
import { tagRoutes } from './tags.ts'

/** Routes that take what a person types into a form; commands and files have limits of their own. */
const FORMS = [
  '/installation/*',
  '/invitations',
  '/join/:token',
  '/magic-link',
  '/prove',
  '/sign-out-everywhere',
  '/handovers/:id/link',
  '/receipts/:token',
  '/device/*',
  '/shops/:id/devices/*',
  '/shops/:id/hands/*',
  '/my-codes/*',
  '/phone-links/*',
]
const formLimit = bodyLimit({
  maxSize: 200_000,
  onError: (context) =>
    context.json({ error: { field: 'body', message: 'That is more than a form can hold.' } }, 413),
})

/** The HTTP API but sign-in: each file of this folder adds its routes to one app, under `/api`. */
export function apiApp(doors: Doors): Hono {
  const api = new Hono().basePath('/api')
  api.use(guard(doors.isOwnOrigin))
  api.use(async (context, next) => {
    await next()
    // What one person may see is nobody else's, and no cache's.
    if (!context.res.headers.has('cache-control'))
      context.res.headers.set('cache-control', 'no-store')
  })
  api.get('/health', (context) => context.json({ status: 'ok', version: doors.version }))
  api.get('/openapi.json', (context) => context.json(openApi(doors.version)))
  for (const path of FORMS) api.use(path, formLimit)
  commandRoutes(api, doors)
  meRoutes(api, doors)
  projectRoutes(api, doors)
  shopRoutes(api, doors)
  deviceRoutes(api, doors)
  fileRoutes(api, doors)
  installationRoutes(api, doors)
  invitationRoutes(api, doors)
  receiptRoutes(api, doors)
  tagRoutes(api, doors)
  api.notFound((context) =>
    context.json({ error: { field: 'path', message: 'There is nothing here.' } }, 404),
  )
  api.onError((error, context) => {
    const answer = faultAnswer(context, error)
    if (answer !== undefined) return answer
    console.error(error)
    const message = 'Something broke on our side. Nothing was changed; try again.'
    return context.json({ error: { field: 'server', message } }, 500)
  })
  return api
}
