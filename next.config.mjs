import { fileURLToPath } from 'node:url'

/** @type {import('next').NextConfig} */
const config = {
  poweredByHeader: false,
  // lib/server/web presses all text that leaves the port, the API's too.
  compress: false,
  reactStrictMode: true,
  // `npm run check` and `npm test` check the types; a start needn't wait for it again.
  typescript: { ignoreBuildErrors: true },
  turbopack: { root: fileURLToPath(new URL('.', import.meta.url)) },
  // Writing the cache cost 24 s of a 73 s first build, and a stamp already skips equal builds.
  experimental: { inlineCss: true, turbopackFileSystemCacheForBuild: false },
}

export default config
