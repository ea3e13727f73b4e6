import { build } from '../lib/bin/prepare.mjs'

/** The browser sees the built pages, as people do. */
export default async function prepare(): Promise<void> {
  await build()
}
