import { projectPath } from '@/app/_ui/paths.ts'
import { tagCode } from '@/lib/custody/tag-code.ts'
import { keptFor } from '@/lib/live/phone/kept-views.ts'
import { openPhoneStore } from '@/lib/live/phone/phone-store.ts'
import { phonePerson } from '@/lib/live/phone/whose-phone.ts'

/** What a code leads to, or why to nothing. */
export type Found =
  | { readonly is: 'found'; readonly path: string }
  | { readonly is: 'not for you' }
  | { readonly is: 'signed out' }
  /** Neither kept on this phone nor asked: no network. */
  | { readonly is: 'no answer' }

/** The assembly with that code: from what this phone has kept, which needs no network, else as the server knows it. */
export async function findAssembly(code: string): Promise<Found> {
  const kept = await findKept(code).catch(() => null)
  if (kept !== null) return { is: 'found', path: kept }
  try {
    const answer = await fetch(`/api/tags/${code}`)
    if (answer.status === 401) return { is: 'signed out' }
    if (answer.status === 404 || answer.status === 400) return { is: 'not for you' }
    if (!answer.ok) return { is: 'no answer' }
    const found: unknown = await answer.json()
    const path = pathIn(found)
    return path === null ? { is: 'no answer' } : { is: 'found', path }
  } catch {
    return { is: 'no answer' }
  }
}

/** Where the assembly's own screen stands. */
export const assemblyPath = (project: string, assembly: string): string =>
  projectPath(project, `assemblies/${assembly}`)

function pathIn(found: unknown): string | null {
  if (typeof found !== 'object' || found === null) return null
  if (!('project' in found) || !('assembly' in found)) return null
  const { project, assembly } = found
  if (typeof project !== 'string' || typeof assembly !== 'string') return null
  return assemblyPath(project, assembly)
}

async function findKept(code: string): Promise<string | null> {
  const person = phonePerson()
  if (person === null) return null
  const store = await openPhoneStore()
  try {
    for (const kept of await keptFor(store, person)) {
      if (kept.kind !== 'project') continue
      const assembly = kept.view.entities.find(
        (entity) => entity.kind === 'assembly' && tagCode(entity.id) === code,
      )
      if (assembly !== undefined) return assemblyPath(kept.record, assembly.id)
    }
    return null
  } finally {
    store.close()
  }
}
