import type { Hono } from 'hono'
import type { View } from '../../record/actor.ts'
import { type PersonId, ProjectId } from '../../record/ids.ts'
import type { ProjectRecord } from '../../record/project-record.ts'
import { Sha256 } from '../../record/scalars.ts'
import { all } from '../../record/table.ts'
import { viewOf } from '../../see/view-of.ts'
import type { Doors } from '../doors.ts'
import { checked, orNotFound, Refused, signedIn } from './door.ts'
import { bytesOf, kept } from './kept.ts'
import { shown } from './shown.ts'

/** Photos and papers of a project: kept by who takes part, shown with what names them. */
export function fileRoutes(api: Hono, { files, reading, sessions }: Doors): void {
  async function inProject(person: PersonId, id: string) {
    const project = ProjectId.safeParse(id)
    const record = project.success ? await reading.project(project.data) : null
    const view = record === null ? null : await reading.viewOf(person, record)
    return orNotFound(record === null || view === null ? null : { record, view })
  }

  api.put('/projects/:id/files/:sha256', async (context) => {
    const { person } = await signedIn(context, sessions)
    const { record, view } = await inProject(person, context.req.param('id'))
    if (view.role === 'observer')
      throw new Refused(403, '', 'You may look, and not add to the record.')
    const sha256 = checked(context.req.param('sha256'), Sha256)
    return kept(context, await files.keep(record.id, sha256, bytesOf(context), person))
  })

  api.get('/projects/:id/files/:sha256', async (context) => {
    const { person } = await signedIn(context, sessions)
    const { record, view } = await inProject(person, context.req.param('id'))
    const sha256 = checked(context.req.param('sha256'), Sha256)
    const file = await files.read(record.id, sha256)
    const mine = file?.by === person
    if (file === null || !(mine || isNamed(record, view, sha256))) return context.notFound()
    return shown(file)
  })
}

/** Whether anything that this view sees names the file. */
function isNamed(record: ProjectRecord, view: View, sha256: Sha256): boolean {
  const seen = viewOf(record, view)
  return (
    all(seen.checks).some(({ files }) => files.includes(sha256)) ||
    all(seen.changeOrders).some(({ files }) => files.includes(sha256)) ||
    all(seen.handovers).some(
      ({ files, receivedFiles }) => files.includes(sha256) || receivedFiles.includes(sha256),
    )
  )
}
