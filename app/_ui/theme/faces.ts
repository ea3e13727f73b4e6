import localFont from 'next/font/local'

/** Everything but numbers, plates and stamps. */
export const textFace = localFont({
  variable: '--face-text',
  display: 'swap',
  src: [
    {
      path: '../../../node_modules/@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff2',
      weight: '400',
    },
    {
      path: '../../../node_modules/@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-600-normal.woff2',
      weight: '600',
    },
    {
      path: '../../../node_modules/@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-800-normal.woff2',
      weight: '800',
    },
  ],
})

/** Numbers, plates, section heads and stamps, from 16 px up. */
export const stencilFace = localFont({
  variable: '--face-stencil',
  display: 'swap',
  // It has one weight; headings that ask for more must not get it smeared.
  src: '../../../node_modules/@fontsource/saira-stencil-one/files/saira-stencil-one-latin-400-normal.woff2',
  weight: '400 900',
})

/** Names beyond western Europe's letters: fetched where one stands on the page, never ahead. */
export const textFaceBeyond = localFont({
  variable: '--face-text-beyond',
  display: 'swap',
  preload: false,
  adjustFontFallback: false,
  declarations: [
    {
      prop: 'unicode-range',
      value:
        'U+0100-02BA, U+02BD-02C5, U+02C7-02CC, U+02CE-02D7, U+02DD-02FF, U+1E00-1E9F, U+1EF2-1EFF, U+20A0-20AB, U+20AD-20C0, U+2C60-2C7F',
    },
  ],
  src: [
    {
      path: '../../../node_modules/@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-400-normal.woff2',
      weight: '400',
    },
    {
      path: '../../../node_modules/@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-600-normal.woff2',
      weight: '600',
    },
    {
      path: '../../../node_modules/@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-800-normal.woff2',
      weight: '800',
    },
  ],
})
