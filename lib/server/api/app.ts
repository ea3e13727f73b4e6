import { Hono } from 'hono'
import type { Services } from '../services.ts'
import { guard } from './guard.ts'

/** The HTTP API but sign-in: each file of this folder adds its routes to one app, under `/api`. */
export function apiApp(services: Services): Hono {
  const api = new Hono().basePath('/api')
  api.use(guard(services.isOwnOrigin))
  api.get('/health', (context) => context.json({ status: 'ok', version: services.version }))
  // Further routes: `commandRoutes(api, services)` and the like, a file each.
  api.notFound((context) =>
    context.json({ error: { field: 'path', message: 'There is nothing here.' } }, 404),
  )
  api.onError((error, context) => {
    console.error(error)
    const message = 'Something broke on our side. Nothing was changed; try again.'
    return context.json({ error: { field: 'server', message } }, 500)
  })
  return api
}
