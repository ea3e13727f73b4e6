import { projectPath, shopPath } from '@/app/_ui/paths.ts'
import type { Me } from '@/lib/command/wire.ts'

/** The one place that somebody has: their shop's day sheet, or their car. Undefined where they have several, or none. */
export function onlyPlaceOf({ shops, projects }: Me): string | undefined {
  const [shop, project] = [shops[0], projects[0]]
  if (shop !== undefined) return shops.length === 1 ? shopPath(shop.id) : undefined
  return project !== undefined && projects.length === 1 ? projectPath(project.id) : undefined
}
