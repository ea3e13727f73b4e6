import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { promisify } from 'node:util'
import { brotliCompress, constants, gzip } from 'node:zlib'
import { build } from 'esbuild'
import { root, say } from './prepare.mjs'
import { shellFiles } from './shell-files.ts'

// Run by `prepare.mjs` after `next build`: the service worker, and every script and style pressed once for all its readers.

const NEXT = join(root, '.next')
const STATIC = join(NEXT, 'static')
/** Below this, pressing gains less than a header costs, in bytes. */
const WORTH_PRESSING = 1_024

await Promise.all([buildWorker(), pressStatic()])

async function buildWorker(): Promise<void> {
  const id = readFileSync(join(NEXT, 'BUILD_ID'), 'utf8').trim()
  const files = shellFiles(NEXT)
  const entries = [
    // Its own address is the same in every build, so the build says whether it changed.
    { url: '/shell', revision: id },
    ...files.map((file) => ({ url: `/_next/${file}`, revision: null })),
  ]
  await build({
    entryPoints: [join(root, 'lib/live/service-worker/worker.ts')],
    outfile: join(root, 'public/sw.js'),
    bundle: true,
    minify: true,
    format: 'iife',
    target: 'es2022',
    logLevel: 'warning',
    define: {
      PRECACHE: JSON.stringify(entries),
      BUILD: JSON.stringify(id),
      'process.env.NODE_ENV': '"production"',
    },
  })
  say(`service worker made; a phone keeps ${entries.length} files to read without a network.`)
}

/** Beside each text file its `.br` and `.gz`, which lib/server/web/static-files.ts serves. */
async function pressStatic(): Promise<void> {
  const names = readdirSync(STATIC, { recursive: true, encoding: 'utf8' })
  await Promise.all(
    names
      .filter((name) => /\.(js|css|svg|json)$/.test(name))
      .map(async (name) => {
        const file = join(STATIC, name)
        const bytes = readFileSync(file)
        if (bytes.length < WORTH_PRESSING || existsSync(`${file}.br`)) return
        const [br, gz] = await Promise.all([
          promisify(brotliCompress)(bytes, {
            params: {
              [constants.BROTLI_PARAM_QUALITY]: constants.BROTLI_MAX_QUALITY,
              [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length,
            },
          }),
          promisify(gzip)(bytes, { level: constants.Z_BEST_COMPRESSION }),
        ])
        writeFileSync(`${file}.br`, br)
        writeFileSync(`${file}.gz`, gz)
      }),
  )
}
