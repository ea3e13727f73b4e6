import type { ProjectRecord } from '@/lib/record/project-record.ts'

/** Address of a project, and of its screens. */
export const projectPath = (project: string, screen = ''): string =>
  screen === '' ? `/p/${project}` : `/p/${project}/${screen}`

/** Address of a shop's day sheet, and of its other screens. */
export const shopPath = (shop: string, screen = ''): string =>
  screen === '' ? `/shops/${shop}` : `/shops/${shop}/${screen}`

const screens: { readonly [prefix: string]: string } = {
  stg: 'stages',
  hnd: 'handovers',
  cho: 'change-orders',
  dcs: 'decisions',
  prt: 'parts',
  slt: 'windows',
  win: 'windows',
  asm: 'assemblies',
  clr: 'colours',
}

/**
 * Address of the screen on which an entity stands: its own, or, for what lies on a stage's card, that stage's. Null where it has
 * none.
 */
export function pathOf(record: ProjectRecord, id: string): string | null {
  const prefix = id.slice(0, 3)
  const screen = screens[prefix]
  if (screen === 'windows') return projectPath(record.id, `windows#${id}`)
  if (screen !== undefined) return projectPath(record.id, `${screen}/${id}`)
  const coated = record.coats.rows.get(id)?.assembly ?? record.films.rows.get(id)?.assembly
  if (coated !== undefined) return projectPath(record.id, `coating/${coated}`)
  const stage =
    record.checks.rows.get(id)?.stage ??
    record.holds.rows.get(id)?.stage ??
    record.signOffs.rows.get(id)?.stage ??
    record.concessions.rows.get(id)?.stage
  return stage === undefined ? null : projectPath(record.id, `stages/${stage}#${id}`)
}
