import type { Context, Hono } from 'hono'
import type { View } from '../../record/actor.ts'
import { type PersonId, ProjectId } from '../../record/ids.ts'
import type { ProjectRecord } from '../../record/project-record.ts'
import { Sha256 } from '../../record/scalars.ts'
import { all } from '../../record/table.ts'
import { viewOf } from '../../see/view-of.ts'
import type { Doors } from '../doors.ts'
import { answerableIn, checked, orNotFound, Refused } from './door.ts'
import { bytesOf, kept, lengthOf } from './kept.ts'
import { shown } from './shown.ts'
import { beginUpload, goOnWithUpload } from './upload.ts'

/** Photos and papers of a project: kept by who takes part, shown with what names them. */
export function fileRoutes(api: Hono, doors: Doors): void {
  const { files, uploads, reading, limits } = doors

  async function inProject(context: Context) {
    const who = await answerableIn(context, doors)
    const project = ProjectId.safeParse(context.req.param('id'))
    const record = project.success ? await reading.project(project.data) : null
    const view = record === null ? null : await reading.viewOf(who, record)
    return orNotFound(
      record === null || view === null ? null : { person: who.person, record, view },
    )
  }
  type There = Awaited<ReturnType<typeof inProject>>

  async function adding(context: Context): Promise<There> {
    const there = await inProject(context)
    if (there.view.role === 'observer')
      throw new Refused(403, '', 'You may look, and not add to the record.')
    return there
  }

  /** A kept file, where this person sent it, or sees what names it. */
  async function readable({ person, record, view }: There, sha256: Sha256) {
    const file = await files.read(record.id, sha256)
    return file?.by === person || isNamed(record, view, sha256) ? file : null
  }

  const uploadFor = ({ person, record }: There) => ({
    project: record.id,
    by: person,
    sender: person,
    address: `/api/projects/${record.id}/uploads`,
  })
  const count = (person: PersonId, bytes: number) => limits.bytes('person', person, bytes)

  api.put('/projects/:id/files/:sha256', async (context) => {
    const { person, record } = await adding(context)
    const sha256 = checked(context.req.param('sha256'), Sha256)
    await count(person, lengthOf(context))
    return kept(context, await files.keep(record.id, sha256, bytesOf(context), person))
  })

  api.get('/projects/:id/files/:sha256', async (context) => {
    const there = await inProject(context)
    const sha256 = checked(context.req.param('sha256'), Sha256)
    const file = await readable(there, sha256)
    return file === null ? context.notFound() : shown(file)
  })

  api.post('/projects/:id/uploads', async (context) => {
    const there = await adding(context)
    return beginUpload(context, uploads, uploadFor(there), {
      isKept: async (sha256) => (await readable(there, sha256)) !== null,
      count: (bytes) => count(there.person, bytes),
    })
  })

  // HEAD comes by the door of GET.
  api.on(['GET', 'PATCH', 'DELETE'], '/projects/:id/uploads/:upload', async (context) =>
    goOnWithUpload(context, uploads, uploadFor(await adding(context))),
  )
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
