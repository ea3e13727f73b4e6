import type { MetadataRoute } from 'next'

/** By day, as `tokens.css` has them: what a launcher paints before the first page does. */
const FLOOR = '#c3c7c6'

/** What a phone needs to know to put Fettleyard among its programs. Addresses are relative to it, so any PUBLIC_URL will do. */
export default function manifest(): MetadataRoute.Manifest {
  return {
    id: '/',
    name: 'Fettleyard',
    short_name: 'Fettleyard',
    description: 'One car, several shops, one record.',
    lang: 'en-GB',
    dir: 'ltr',
    start_url: '/?in',
    scope: '/',
    display: 'standalone',
    background_color: FLOOR,
    theme_color: FLOOR,
    categories: ['business', 'productivity'],
    icons: [
      { src: '/icons/card-192.png', sizes: '192x192', type: 'image/png', purpose: 'any' },
      { src: '/icons/card-512.png', sizes: '512x512', type: 'image/png', purpose: 'any' },
      {
        src: '/icons/card-maskable-512.png',
        sizes: '512x512',
        type: 'image/png',
        purpose: 'maskable',
      },
    ],
    shortcuts: [
      {
        name: 'Day sheet',
        description: 'What can start, what waits on you, what is coming.',
        url: '/day-sheet',
        icons: [{ src: '/icons/card-192.png', sizes: '192x192', type: 'image/png' }],
      },
      {
        name: 'Scan a tag',
        description: 'The camera reads the tag of an assembly.',
        url: '/scan',
        icons: [{ src: '/icons/card-192.png', sizes: '192x192', type: 'image/png' }],
      },
    ],
  }
}
