import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import * as z from 'zod/mini'

const BuildManifest = z.object({ rootMainFiles: z.array(z.string()) })

/** Libraries for desks: a phone without a network does without them. */
const DESK_ONLY = /react-aria-[A-Z]|data-react-aria/

/**
 * All that the page `/shell` can come to load: its own scripts, those that they load by `import()`, and so on, styles and faces;
 * not what is for desks only. Names relative to `.next`, such as `static/chunks/….js`. @throws where the build has no such page
 */
export function shellFiles(next: string): readonly string[] {
  const manifest = join(next, 'server/app/shell/page_client-reference-manifest.js')
  const { rootMainFiles } = z.parse(
    BuildManifest,
    JSON.parse(readFileSync(join(next, 'build-manifest.json'), 'utf8')),
  )
  const found = new Set<string>()
  const coming = [...rootMainFiles, ...filesNamedIn(readFileSync(manifest, 'utf8'))]
  for (const file of coming) {
    if (found.has(file) || !existsSync(join(next, file))) continue
    if (!/\.(js|css)$/.test(file)) {
      found.add(file)
      continue
    }
    const text = readFileSync(join(next, file), 'utf8')
    if (DESK_ONLY.test(text)) continue
    found.add(file)
    coming.push(...filesNamedIn(text))
  }
  return [...found].sort()
}

/** Scripts name others whole; a style names its faces from where it lies (`../media/…`). */
function filesNamedIn(text: string): readonly string[] {
  const whole = text.match(/static\/(?:chunks|media)\/[\w.~-]+\.\w+/g) ?? []
  const fromStyle = text.match(/(?<=\.\.\/)media\/[\w.~-]+\.\w+/g) ?? []
  return [...whole, ...fromStyle.map((file) => `static/${file}`)]
}
