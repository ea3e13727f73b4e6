import type { Hono } from 'hono'
import { readTagCode } from '../../custody/tag-code.ts'
import type { Doors } from '../doors.ts'
import { findTag } from '../views/tags.ts'
import { lookerIn, Refused } from './door.ts'

/** Which assembly a scanned or typed tag belongs to. */
export function tagRoutes(api: Hono, doors: Doors): void {
  api.get('/tags/:code', async (context) => {
    const who = await lookerIn(context, doors)
    const read = readTagCode(context.req.param('code'))
    if (!read.ok)
      throw new Refused(400, 'code', 'That is no code of a tag: it has eight figures and letters.')
    const found = await findTag(doors.reading, who, read.code)
    if (found === null)
      throw new Refused(404, 'code', 'No assembly that you may see has this code.')
    return context.json(found)
  })
}
